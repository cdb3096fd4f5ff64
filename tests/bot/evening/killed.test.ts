import { describe, expect, it } from "vitest";
import { temporaryFolder } from "../store/temporary-folder.ts";
import { type Change, KILL_STEPS, killScene } from "./kill-scene.ts";

/** Takes the claim out: every process believes that the message is its own, and new. */
const withoutClaim: Change = (world) => ({
  ...world,
  claims: { ...world.claims, find: async () => null, claim: async () => true, beginSend: async () => true },
});

/** Takes the look into the channel out: nothing is ever found there. */
const withoutLookUp: Change = (world) => ({
  ...world,
  channel: { ...world.channel, find: async () => ({ kind: "absent" }) },
});

describe("an evening post whose process is killed", { timeout: 60_000 }, () => {
  it.each(KILL_STEPS)("goes out once when killed at “%s” and the nonce is forgotten", async (step) => {
    const { messages, claimState } = await killScene(temporaryFolder(), step, "forgotten");
    expect(messages).toHaveLength(1);
    expect(claimState).toBe("posted");
  });

  it.each(["after beginSend", "request on its way", "reply on its way"] as const)(
    "goes out once when killed at “%s” and the nonce is still remembered",
    async (step) => {
      const { messages, claimState } = await killScene(temporaryFolder(), step, "remembered");
      expect(messages).toHaveLength(1);
      expect(claimState).toBe("posted");
    },
  );

  it("waits for the dead process's lease before it does anything", async () => {
    expect((await killScene(temporaryFolder(), "after claim", "forgotten")).early).toBe(0);
  });

  it("would go out twice without the claim", async () => {
    const { messages } = await killScene(temporaryFolder(), "after send", "forgotten", withoutClaim);
    expect(messages.length).toBeGreaterThan(1);
  });

  it("would go out twice without the look into the channel", async () => {
    const { messages } = await killScene(temporaryFolder(), "reply on its way", "forgotten", withoutLookUp);
    expect(messages).toHaveLength(2);
  });
});
