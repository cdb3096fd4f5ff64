/**
 * The demo club, set up once in a store that does not have it, by the ordinary commands.
 *
 * @packageDocumentation
 */
import { COMMANDS } from "../commands/all.ts";
import { DEMO_CLUB, type DemoMember } from "../config/demo-club.ts";
import type { Settings } from "../config/settings.ts";
import { addClub, makeOrganiser } from "./store/club-rows.ts";
import { openWorld, type World, type WorldOptions } from "./world.ts";

/** Opens the world for the console: with the demo club in it. */
export async function openConsoleWorld(settings: Settings, options: WorldOptions = {}): Promise<World> {
  const world = await openWorld(settings, options);
  try {
    await setUpDemoClub(world);
    return world;
  } catch (fault) {
    await world.close();
    throw fault;
  }
}

/** Sets the demo club up, all or nothing, unless it is there; two processes at once set it up once. */
async function setUpDemoClub(world: World): Promise<void> {
  const { db } = world.store;
  const known = await db.selectFrom("clubs").select("id").where("id", "=", DEMO_CLUB.id).executeTakeFirst();
  if (known) return;
  await db.transaction().execute(async (transaction) => {
    const now = world.clock().getTime();
    if (!(await addClub(transaction, DEMO_CLUB, now))) return;
    const context = world.contextWithin(transaction);
    for (const member of DEMO_CLUB.members) {
      if (member.organiser) await makeOrganiser(transaction, DEMO_CLUB.id, member.id, now);
      for (const question of member.questions) {
        const command = COMMANDS.find(({ definition }) => definition.name === question.command);
        if (!command) throw new Error(`the demo club asks for “${question.command}”, which is no command`);
        await command.answer({ ...question, ...asked(member), at: world.clock() }, context);
      }
    }
  });
}

function asked({ id, organiser }: DemoMember) {
  return { club: DEMO_CLUB.id, member: { id, name: id, organiser } };
}
