import { describe, expect, it } from "vitest";
import { readExifText } from "../../../core/log/exif-text.ts";
import { processorClock } from "../../processor-clock.ts";

const ZONE = "Europe/London";

const TWO_PICTURES = `======== IMG_0412.CR2
File Name                       : IMG_0412.CR2
Exposure Time                   : 120
F Number                        : 2.8
ISO                             : 1600
Date/Time Original              : 2026:10:03 22:40:10
Create Date                     : 2026:10:03 22:40:10
Camera Temperature              : 18 C
Focal Length                    : 135.0 mm
======== IMG_0413.CR2
File Name                       : IMG_0413.CR2
Exposure Time                   : 120
ISO                             : 1600
Date/Time Original              : 2026:10:03 22:42:20
Camera Temperature              : 19 C
`;

describe("readExifText", () => {
  it("reads one picture after another, by the site's clock", () => {
    const read = readExifText(TWO_PICTURES, ZONE);
    expect(read).toMatchObject({
      kind: "read",
      frames: [
        { subSeconds: 120, iso: 1600, sensorCelsius: 18, startedAt: new Date("2026-10-03T21:40:10Z") },
        { subSeconds: 120, iso: 1600, sensorCelsius: 19, startedAt: new Date("2026-10-03T21:42:20Z") },
      ],
    });
  });

  it("parts pictures where a tag returns, without any rule between", () => {
    const text =
      "ExposureTime: 30\nDateTimeOriginal: 2026:10:03 22:40:10\nExposureTime: 60\nDateTimeOriginal: 2026:10:03 22:41:00\n";
    expect(readExifText(text, ZONE)).toMatchObject({ frames: [{ subSeconds: 30 }, { subSeconds: 60 }] });
  });

  it.each([
    ["Exposure Time : 1/60\nDate and Time (Original) : 2026:10:03 22:40:10", 1 / 60],
    ["Exposure time\t2.5 sec.\nDate Time Original\t2026:10:03 22:40:10", 2.5],
    ['Shutter Speed = 30"\nDateTime = 2026:10:03 22:40:10', 30],
    ["ExposureTime: 180/1\r\nDateTimeOriginal: 2026-10-03T22:40:10\r\n", 180],
  ])("reads the exposure of “%s”", (text, seconds) => {
    expect(readExifText(text, ZONE)).toMatchObject({ frames: [{ subSeconds: seconds }] });
  });

  it("prefers the offset that the picture itself gives", () => {
    const text = "Exposure Time: 30\nDate/Time Original: 2026:10:03 22:40:10\nOffset Time Original: +02:00";
    expect(readExifText(text, ZONE)).toMatchObject({
      frames: [{ startedAt: new Date("2026-10-03T20:40:10Z") }],
    });
  });

  it("reads a listing whose lines a chat ran together", () => {
    const read = readExifText(TWO_PICTURES.replaceAll("\n", " "), ZONE);
    expect(read).toMatchObject({
      frames: [
        { subSeconds: 120, iso: 1600, sensorCelsius: 18 },
        { subSeconds: 120, iso: 1600, startedAt: new Date("2026-10-03T21:42:20Z") },
      ],
    });
  });

  it("is done quickly with a long text of blanks", () => {
    const processorMs = processorClock();
    for (const blank of ["\t", " ", "= "]) {
      expect(readExifText(`a${blank.repeat(1_000_000)}`, ZONE).kind).toBe("refused");
      expect(readExifText(`a${blank.repeat(9_000)}`, ZONE).kind).toBe("refused");
      expect(readExifText(`a${blank.repeat(1_000_000)}\nb`, ZONE).kind).toBe("refused");
    }
    expect(processorMs()).toBeLessThan(3000);
  });

  it("says what it misses", () => {
    expect(readExifText("hello", ZONE)).toEqual({ kind: "refused", fault: { kind: "no-pictures" } });
    expect(readExifText("Exposure Time : 30\nISO : 800", ZONE)).toMatchObject({
      fault: { kind: "missing", picture: 1, key: "date and time" },
    });
    expect(readExifText("Exposure Time : long\nDateTimeOriginal: 2026:10:03 22:40:10", ZONE)).toMatchObject({
      fault: { kind: "unreadable", picture: 1, key: "exposure time", text: "long" },
    });
    expect(readExifText("Exposure Time : 30\nDateTimeOriginal: 2026:13:45 22:40:10", ZONE)).toMatchObject({
      fault: { kind: "unreadable", key: "date and time" },
    });
  });
});
