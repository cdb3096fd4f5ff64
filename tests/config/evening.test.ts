import { describe, expect, it } from "vitest";
import * as evening from "../../config/evening.ts";

/** What the stand-in for Discord assumes; documented is "the past few minutes". */
const NONCE_REMEMBERED_MS = 120_000;

describe("the evening's pace", () => {
  it("fits every attempt and pause into the lease", () => {
    const pauses = evening.ATTEMPT_PAUSES_MS.reduce((sum, pause) => sum + pause, 0);
    const attempts = (evening.ATTEMPT_PAUSES_MS.length + 1) * evening.ATTEMPT_MS;
    expect(pauses + attempts).toBeLessThan(evening.LEASE_MS);
  });

  it("trusts no nonce that may be forgotten before an attempt under it ends", () => {
    expect(evening.NONCE_TRUSTED_MS + evening.ATTEMPT_MS).toBeLessThan(NONCE_REMEMBERED_MS);
  });

  it("keeps a lease no longer than a nonce is remembered, so that one holder's attempts share it", () => {
    expect(evening.LEASE_MS).toBeLessThanOrEqual(NONCE_REMEMBERED_MS);
  });

  it("looks after a post no oftener than it may be edited, and not much less", () => {
    expect(evening.LOOK_AGAIN_MS).toBeLessThanOrEqual(evening.EDIT_AGAIN_MS);
    expect(evening.EDIT_AGAIN_MS).toBe(15 * 60_000);
    expect(evening.WINDOW_MOVED_MS).toBe(30 * 60_000);
  });
});
