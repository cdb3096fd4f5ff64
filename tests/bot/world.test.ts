import { DateTime } from "luxon";
import { describe, expect, it } from "vitest";
import { worldIn } from "./console/asked.ts";
import { temporaryFolder } from "./store/temporary-folder.ts";

describe("timeZoneAt", () => {
  // The zones are the IANA database's; the towns' zones are common knowledge.
  it.each([
    ["London", 51.5, -0.13, "Europe/London"],
    ["Cape Town", -33.93, 18.42, "Africa/Johannesburg"],
    ["St. John's", 47.56, -52.71, "America/St_Johns"],
    ["Kathmandu", 27.71, 85.32, "Asia/Kathmandu"],
    ["Lord Howe Island", -31.55, 159.08, "Australia/Lord_Howe"],
  ])("knows the clock of %s", async (_, latitude, longitude, zone) => {
    const context = (await worldIn(temporaryFolder())).context();
    expect(context.timeZoneAt(latitude, longitude)).toBe(zone);
  });

  it("names a zone whose clock is known everywhere on the Earth, poles and date line included", async () => {
    const context = (await worldIn(temporaryFolder())).context();
    const unknown = new Set<string>();
    for (let latitude = -90; latitude <= 90; latitude += 2.5) {
      for (let longitude = -180; longitude <= 180; longitude += 2.5) {
        const zone = context.timeZoneAt(latitude, longitude);
        if (!DateTime.fromMillis(0, { zone }).isValid) unknown.add(zone);
      }
    }
    expect([...unknown]).toEqual([]);
  });
});

describe("context", () => {
  it("reads the catalogue once, when it is first asked for", async () => {
    const context = (await worldIn(temporaryFolder())).context();
    expect(context.catalogue).toBe(context.catalogue);
    expect(context.catalogue.find("M33").kind).toBe("found");
  });

  it("opens no weather service for a world that closes unasked", async () => {
    const world = await worldIn(temporaryFolder());
    await expect(world.close()).resolves.toBeUndefined();
  });
});
