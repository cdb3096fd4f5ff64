import { describe, expect, it } from "vitest";
import { CLEAR, clearUntil, type EveningScene, OVERCAST, openEvening } from "./evening-scene.ts";

const NIGHT = "2026-10-03";
const WREN = { id: "111111111111111111", name: "Wren" };
const LARK = { id: "222222222222222222", name: "Lark" };

async function goesOut(scene: EveningScene, person: typeof WREN) {
  const outcome = await scene.goingOut.press({ club: scene.guild.id, night: NIGHT, person });
  await scene.goingOut.settled();
  return outcome;
}

const post = (scene: EveningScene) => scene.messages()[0];
const replies = (scene: EveningScene) => scene.messages().slice(1);

describe("a posted night", () => {
  it("is edited when its verdict changes, at most once in fifteen minutes", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    scene.weather = OVERCAST;
    await scene.pass(10);
    expect(post(scene)?.edits).toBe(0);
    await scene.pass(10);
    expect(post(scene)?.edits).toBe(1);
    scene.weather = CLEAR;
    await scene.pass(5);
    expect(post(scene)?.edits).toBe(1);
    await scene.pass(15);
    expect(post(scene)?.edits).toBe(2);
    await scene.pass(60);
    expect(post(scene)?.edits).toBe(2);
    expect(scene.messages()).toHaveLength(1);
  });

  it("is edited for a window that moved by half an hour at two looks running, not at one", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    scene.weather = clearUntil("2026-10-04T02:00:00Z");
    await scene.pass(15);
    expect(post(scene)?.edits).toBe(0);
    scene.weather = CLEAR;
    await scene.pass(15);
    expect(post(scene)?.edits).toBe(0);
    scene.weather = clearUntil("2026-10-04T02:00:00Z");
    await scene.pass(30);
    expect(post(scene)?.edits).toBe(1);
  });

  it("is left as it is when the forecast goes missing", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    scene.weather = null;
    await scene.pass(60);
    expect(post(scene)?.edits).toBe(0);
  });

  it("stays gone when it was deleted", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    scene.channel.messages.length = 0;
    scene.weather = OVERCAST;
    await scene.pass(60);
    expect(scene.messages()).toEqual([]);
    const requests = scene.standIn.rest.requests.length;
    scene.weather = CLEAR;
    await scene.pass(60);
    expect(scene.standIn.rest.requests).toHaveLength(requests);
  });

  it("is edited later when the server failed at first", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    scene.weather = OVERCAST;
    scene.standIn.faults.add("PATCH", /messages/, { kind: "status", status: 500 }, 1);
    await scene.pass(25);
    expect(post(scene)?.edits).toBe(1);
  });

  it("marks a channel that refuses an edit, and asks it no more", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    scene.weather = OVERCAST;
    scene.standIn.faults.add("PATCH", /messages/, { kind: "status", status: 403, code: 50_001 }, 9);
    await scene.pass(60);
    const edits = scene.standIn.rest.requests.filter(({ method }) => method === "PATCH");
    expect(edits).toHaveLength(1);
    expect((await scene.books.clubs.settings(scene.guild.id)).channelId).toBeNull();
  });

  it("is no longer looked after once its window has ended", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    scene.at("2026-10-04T05:00:00Z");
    scene.weather = OVERCAST;
    await scene.pass(60);
    expect(post(scene)?.edits).toBe(0);
  });
});

describe("those who are going out", () => {
  it("stand under the post by name, and leave by pressing again", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    expect(JSON.stringify(post(scene)?.embeds)).toContain("Nobody yet");
    expect(await goesOut(scene, WREN)).toBe("going");
    expect(await goesOut(scene, LARK)).toBe("going");
    expect(post(scene)?.embeds).toMatchObject([{ fields: [{ name: "Going out", value: "Wren, Lark" }] }]);
    expect(await goesOut(scene, WREN)).toBe("not-going");
    expect(post(scene)?.embeds).toMatchObject([{ fields: [{ name: "Going out", value: "Lark" }] }]);
    expect(post(scene)?.content).toContain("**Caution.**");
    expect(post(scene)?.components).toHaveLength(1);
  });

  it("share edits when many press at once", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    await Promise.all(
      Array.from({ length: 30 }, (_, index) =>
        scene.goingOut.press({
          club: scene.guild.id,
          night: NIGHT,
          person: { id: `3000000000000000${10 + index}`, name: `M${index}` },
        }),
      ),
    );
    await scene.goingOut.settled();
    expect(JSON.stringify(post(scene)?.embeds)).toContain("M29");
    expect(post(scene)?.edits).toBeLessThan(6);
  });

  it("are told of a change in one reply that rings them, cautions first", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    await goesOut(scene, WREN);
    scene.weather = OVERCAST;
    await scene.pass(60);
    const [notice, ...more] = replies(scene);
    expect(more).toEqual([]);
    expect(notice).toMatchObject({ replyTo: post(scene)?.id, pinged: [WREN.id] });
    expect(notice?.content).toMatch(/^\*\*Caution\.\*\* It will be cold/);
    expect(notice?.embeds).toMatchObject([{ title: "Changed at High Moor: now no-go" }]);
  });

  it("are not disturbed by a change when nobody is going out", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    scene.weather = OVERCAST;
    await scene.pass(60);
    expect(replies(scene)).toEqual([]);
  });

  it("are warned once, an hour before cloud is due", async () => {
    const scene = await openEvening();
    scene.weather = clearUntil("2026-10-04T01:00:00Z");
    await scene.run.tick();
    await goesOut(scene, WREN);
    scene.at("2026-10-03T23:30:00Z");
    await scene.run.tick();
    expect(replies(scene)).toEqual([]);
    scene.at("2026-10-04T00:30:00Z");
    await scene.run.tick();
    await scene.pass(20);
    const [warning, ...more] = replies(scene);
    expect(more).toEqual([]);
    expect(warning?.pinged).toEqual([WREN.id]);
    expect(JSON.stringify(warning?.embeds)).toMatch(/Cloud from about 02:\d\d at High Moor/);
  });

  it("learn that the night is over when they press too late, or on a post nobody knows", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    scene.at("2026-10-04T09:00:00Z");
    expect(await goesOut(scene, WREN)).toBe("over");
    const unknown = { club: scene.guild.id, night: "2020-01-01", person: WREN };
    expect(await scene.goingOut.press(unknown)).toBe("unknown");
  });
});

describe("mentions", () => {
  it("ring those who asked and whose own site has hours enough, nobody else", async () => {
    const scene = await openEvening();
    const { books, guild } = scene;
    const own = (await books.sites.list(guild.id, "a-member"))[0]?.site;
    if (own === undefined) throw new Error("no site");
    for (const { id } of [WREN, LARK]) await books.sites.save(guild.id, id, { ...own, name: `garden ${id}` });
    await books.notify.set(guild.id, WREN.id, { siteName: null, leastHours: 3 });
    await books.notify.set(guild.id, LARK.id, { siteName: null, leastHours: 14 });
    await scene.run.tick();
    expect(post(scene)?.pinged).toEqual([WREN.id]);
    expect(post(scene)?.content).toContain(`<@${WREN.id}>`);
    expect(post(scene)?.content).not.toContain(LARK.id);
  });

  it("go on in a second message where one cannot ring them all", async () => {
    const scene = await openEvening();
    const { books, guild } = scene;
    for (let index = 0; index < 45; index++) {
      await books.notify.set(guild.id, `4000000000000000${10 + index}`, {
        siteName: "High Moor",
        leastHours: 1,
      });
    }
    await scene.run.tick();
    const rung = scene.messages().flatMap(({ pinged }) => pinged);
    expect(scene.messages()).toHaveLength(2);
    expect(new Set(rung).size).toBe(45);
    await scene.pass(30);
    expect(scene.messages()).toHaveLength(2);
  });
});
