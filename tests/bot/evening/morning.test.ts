import { describe, expect, it } from "vitest";
import { eveningRun } from "../../../bot/evening/tick.ts";
import { CLEAR, type EveningScene, OVERCAST, openEvening } from "./evening-scene.ts";

const NIGHT = "2026-10-03";
const WREN = { id: "111111111111111111", name: "Wren" };

/** The morning after, some hours past the end of the darkness (near 04:35 UTC). */
const MORNING = "2026-10-04T08:00:00Z";

async function goesOut(scene: EveningScene) {
  await scene.goingOut.press({ club: scene.guild.id, night: NIGHT, person: WREN });
  await scene.goingOut.settled();
}

const replies = (scene: EveningScene) => scene.messages().slice(1);
const labels = (message: { components: unknown[] }) =>
  [...JSON.stringify(message.components).matchAll(/"label":"([^"]*)"/g)].map(([, label]) => label);

describe("the morning after", () => {
  it("asks those who were out by two buttons, once, under the post", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    await goesOut(scene);
    scene.at("2026-10-04T05:30:00Z");
    await scene.run.tick();
    expect(replies(scene)).toHaveLength(0);
    scene.at(MORNING);
    await scene.pass(60);
    expect(replies(scene)).toHaveLength(1);
    const [asked] = replies(scene);
    expect(asked?.replyTo).toBe(scene.messages()[0]?.id);
    expect(asked?.pinged).toEqual([WREN.id]);
    expect(JSON.stringify(asked?.embeds) + asked?.content).toContain("“go”");
    expect(labels(asked ?? { components: [] })).toEqual([
      "The sky kept its word",
      "It did not",
      "The night is over",
    ]);
  });

  it("asks once however many processes tick", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    await goesOut(scene);
    const other = await scene.another("another process");
    scene.at(MORNING);
    await Promise.all([scene.run.tick(), other.tick(), eveningRun(scene.world).tick()]);
    await scene.pass(30);
    expect(replies(scene)).toHaveLength(1);
  });

  it("asks nobody when nobody was out, nor in the afternoon of the next day", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    scene.at(MORNING);
    await scene.pass(30);
    expect(replies(scene)).toHaveLength(0);
    const late = await openEvening();
    await late.run.tick();
    await goesOut(late);
    late.at("2026-10-04T20:30:00Z");
    await late.run.tick();
    expect(late.messages().filter(({ embeds }) => JSON.stringify(embeds).includes("keep its word"))).toEqual(
      [],
    );
  });

  it("keeps the verdict of the night and those of the nights ahead, once", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    scene.weather = OVERCAST;
    await scene.pass(30);
    const notes = await scene.books.record.notes(scene.guild.id, "High Moor");
    const together = notes.filter(({ model }) => model === null);
    expect(together.filter(({ night }) => night === NIGHT)).toMatchObject([{ leadNights: 0, verdict: "go" }]);
    expect(together.some(({ leadNights }) => leadNights > 0)).toBe(true);
    expect(notes.some(({ model }) => model === "A provider a model")).toBe(true);
  });

  it("keeps no-go verdicts of nights that were not posted", async () => {
    const scene = await openEvening();
    scene.weather = OVERCAST;
    await scene.run.tick();
    expect(scene.messages()).toHaveLength(0);
    const [note] = await scene.books.record.notes(scene.guild.id, "High Moor");
    expect(note).toMatchObject({ night: NIGHT, verdict: "no-go" });
    scene.weather = CLEAR;
  });
});
