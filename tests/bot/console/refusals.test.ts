import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { openConsoleWorld } from "../../../bot/demo-club.ts";
import { readSettings } from "../../../config/settings.ts";
import { bytesOf, temporaryFolder } from "../store/temporary-folder.ts";
import { refusalIn, worldIn } from "./asked.ts";

const SITE = ["site", "add", "--name"];
const RIG = ["rig", "add", "--name", "Test"];
const LENS = [...RIG, "--focal-length", "400", "--f-ratio", "5.6"];
const CAMERA = [...LENS, "--sensor", "23.5x15.7mm", "--pixel", "3.76"];
const FILTER = ["rig", "filter", "--rig", "Eight-inch", "--name"];

/** Words, the option named, and what the message says. */
const REFUSED: readonly (readonly [readonly string[], string | null, RegExp])[] = [
  [[...SITE, "Polar", "--latitude", "91", "--longitude", "0"], "latitude", /from -90 to 90/],
  [[...SITE, "Far", "--latitude", "0", "--longitude", "181"], "longitude", /from -180 to 180/],
  [[...SITE, "Half", "--latitude", "10"], "longitude", /go together/],
  [[...SITE, "Nowhere"], "place", /“place” is missing/],
  [[...SITE, "Lost", "--place", "Zzyzx"], "place", /nothing was found/],
  [[...SITE, "@everyone", "--latitude", "1", "--longitude", "1"], "name", /mentions/],
  [[...SITE, "a\u0007b", "--latitude", "1", "--longitude", "1"], "name", /control characters/],
  [[...SITE, "12, 13", "--latitude", "1", "--longitude", "1"], "name", /letter/],
  [[...SITE, "FELL-END", "--latitude", "1", "--longitude", "1"], "name", /Fell End already/],
  [[...SITE, "Bright", "--latitude", "1", "--longitude", "1", "--sky", "30"], "sky", /from 14 to 22.5/],
  [[...SITE, "High", "--latitude", "1", "--longitude", "1", "--elevation", "20000"], "elevation", /metres/],
  [["site", "edit", "--site", "Fell Edn", "--name", "x"], "site", /Fell End/],
  [["site", "edit", "--site", "Fell End"], null, /what to change/],
  [["site", "remove", "--site", "Garden"], "site", /Saved: Fell End/],
  [["site", "horizon", "--profile", "0:95"], "profile", /from -10 to 90/],
  [["site", "horizon", "--profile", "\u0000\u0001\u0002\u00ff"], "profile", /cannot be read/],
  [["site", "horizon", "--profile", "0:1,".repeat(10_000)], "profile", /at most/],
  [["site", "horizon", "--file", "/nowhere/at/all"], "file", /path of a file/],
  [[...LENS], "sensor", /lacks the sensor/],
  [[...LENS, "--sensor", "23.5x15.7mm", "--pixel", "0"], "pixel", /from 0.5 to 50/],
  [[...LENS, "--sensor", "23.5x15.7mm", "--pixel", "1000000"], "pixel", /from 0.5 to 50/],
  [[...LENS, "--sensor", "600x500mm", "--pixel", "3.76"], "sensor", /from 1 to 254 mm/],
  [[...LENS, "--sensor", "IMX000"], "sensor", /nearest are IMX/],
  [[...RIG, "--focal-length", "0", "--f-ratio", "5"], "focal-length", /from 4 to 20000/],
  [[...RIG, "--focal-length", "400", "--f-ratio", "0.1"], "f-ratio", /from 0.7 to 64/],
  [[...RIG, "--focal-length", "400"], "f-ratio", /“f-ratio” is missing/],
  [[...RIG, "--aperture", "250", "--f-ratio", "4.8", "--modified"], "modified", /visual rig/],
  [
    [...RIG, "--aperture", "250", "--f-ratio", "4.8", "--eyepieces", "0/50"],
    "eyepieces",
    /from 1.5 to 100 mm/,
  ],
  [[...CAMERA, "--sensor-temp", "400"], "sensor-temp", /from -100 to 60/],
  [[...CAMERA, "--efficiency", "656:2"], "efficiency", /from 0.001 to 1/],
  [[...CAMERA, "--dark", "lots"], "dark", /0.003 at 0C/],
  [[...CAMERA, "--mount", "gyroscope"], "mount", /german, fork/],
  [[...RIG, "--description", "400mm f/5.6 zebra IMX571"], "description", /“zebra” was not understood/],
  [[...FILTER, "Wide", "--bands", "500/600"], "bands", /600 nm wide/],
  [[...FILTER, "Mystery"], "bands", /“bands” is missing/],
  [[...FILTER, "Hα", "--sub", "-5"], "sub", /seconds/],
  [[...FILTER, "Hα", "--measured-adu", "1200"], "measured-offset", /together/],
  [
    [...FILTER, "Hα", "--measured-adu", "500", "--measured-offset", "900", "--measured-seconds", "300"],
    "measured-adu",
    /is believed/,
  ],
  [[...FILTER, "Nothing", "--remove"], "name", /keeps no filter/],
  [["rig", "remove", "--rig", "Nine-inch"], "rig", /Saved: Eight-inch/],
  [["mydata", "erase"], "confirm", /“confirm” is missing/],
  [["mydata", "erase", "--confirm", "no"], "confirm", /must be yes/],
  [["night", "--night", "2026-02-30"], "night", /does not exist/],
  [["night", "--nights", "401"], "nights", /from 1 to 400/],
  [["night", "--nights", "0"], "nights", /from 1 to 400/],
  [["forecast", "--nights", "17"], "nights", /from 1 to 16/],
  [["night", "--site", "91,0"], "site", /from -90 to 90/],
  [["night", "--as", "<@123456789012345678>"], "as", /mentions/],
  [["night", "--forecast", "/nowhere.json"], "forecast", /“forecast”/],
  [["target", "--target", "M3333"], "target", /nearest/],
];

describe("a refused question", { timeout: 60_000 }, () => {
  it.each(REFUSED)("%j names %s", async (words, option, message) => {
    const world = await worldIn(temporaryFolder());
    const refusal = await refusalIn(world, ...words);
    expect(refusal.option).toBe(option);
    expect(refusal.message).toMatch(message);
    expect(refusal.message).not.toContain("\n");
    // “message names the option in words”
    if (option !== null) expect(refusal.message.toLowerCase()).toContain(option.toLowerCase());
  });

  it("leaves the store's bytes as they were, every one of them", async () => {
    const folder = temporaryFolder();
    const settings = readSettings({ DUSKBELL_DATA: folder });
    await (await openConsoleWorld(settings)).close();
    const before = bytesOf(folder);
    const world = await openConsoleWorld(settings);
    for (const [words] of REFUSED) await refusalIn(world, ...words);
    await world.close();
    expect(bytesOf(folder)).toEqual(before);
  });

  it("refuses a file that is too large, of whatever kind, and a binary one", async () => {
    const folder = temporaryFolder();
    const world = await worldIn(join(folder, "data"));
    const large = join(folder, "large.txt");
    writeFileSync(large, Buffer.alloc(50_000_000, "0:1\n"));
    expect((await refusalIn(world, "site", "horizon", "--file", large)).message).toMatch(
      /“file” is too large: 47.7 MB/,
    );
    const binary = join(folder, "binary");
    writeFileSync(binary, Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0x00, 0x10]));
    expect((await refusalIn(world, "site", "horizon", "--file", binary)).option).toBe("file");
    expect((await refusalIn(world, "site", "horizon", "--file", folder)).option).toBe("file");
  });
});
