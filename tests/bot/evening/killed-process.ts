/**
 * A process that makes one evening tick and stops at a chosen step, to be killed there.
 *
 * It says `at <step>` on standard output and then waits for ever; a tick that never
 * reaches the step ends with `done`. The steps lie before and after each call the
 * run makes of its claims and its channel.
 *
 * @packageDocumentation
 */
import { eveningRun } from "../../../bot/evening/tick.ts";
import { openStore } from "../../../bot/store/store.ts";
import { testWorld } from "./fixtures.ts";

export type KilledProcessOrder = {
  readonly folder: string;
  readonly apiBase: string;
  readonly token: string;
  readonly ownId: string;
  readonly startMs: number;
  /** Such as `before claim` or `after settlePosted`. */
  readonly stopAt: string;
};

const order: KilledProcessOrder = JSON.parse(process.argv[2] ?? "{}");

async function stopIf(step: string): Promise<void> {
  if (step !== order.stopAt) return;
  process.stdout.write(`at ${step}\n`);
  await new Promise(() => setInterval(() => undefined, 1000));
}

/** The same object, each of whose calls can be stopped before it begins and after it ends. */
function stoppable<Thing extends object>(thing: Thing): Thing {
  return new Proxy(thing, {
    get(target, name) {
      const member: unknown = Reflect.get(target, name);
      if (typeof member !== "function") return member;
      return async (...input: unknown[]) => {
        await stopIf(`before ${String(name)}`);
        const result: unknown = await Reflect.apply(member, target, input);
        await stopIf(`after ${String(name)}`);
        // A message made ready is a thing with a call of its own.
        return name === "prepare" ? stoppable(result as object) : result;
      };
    },
  });
}

const began = Date.now();
const clock = () => new Date(order.startMs + Date.now() - began);
const store = await openStore(order.folder, order.startMs);
const { world } = testWorld({
  ...order,
  store,
  holder: `process ${process.pid}`,
  clock,
  cloud: () => () => 0,
});
await eveningRun({
  ...world,
  claims: stoppable(world.claims),
  watches: stoppable(world.watches),
  channel: stoppable(world.channel),
}).tick();
process.stdout.write("done\n");
await store.close();
