/**
 * What guests see, held to what handbooks say of small telescopes.
 *
 * Dawes's limit, 116″ over the aperture in mm, and the exit pupil, aperture over power, are textbook
 * rules; what shows to visitors under which sky is common practice.
 */
import { describe, expect, it } from "vitest";
import { openCatalogue } from "../../../bot/library/open-catalogue.ts";
import { showablesOf } from "../../../commands/showables.ts";
import { AUDIENCES, GUESTS, VIEWING } from "../../../config/outreach-evenings.ts";
import type { Audience } from "../../../core/outreach/audience.ts";
import { type BodyLook, guestView } from "../../../core/outreach/guest-view.ts";
import { type Instrument, viewerOf } from "../../../core/outreach/instruments.ts";
import type { Showable } from "../../../core/outreach/showable.ts";

const SHOWABLES = showablesOf(openCatalogue());
const CITY = 18;
const COUNTRY = 21.3;
const EYES: Instrument = { kind: "eyes" };
const BINOCULARS: Instrument = { kind: "binoculars", count: 1, power: 10, apertureMm: 50 };
const telescope = (apertureMm: number): Instrument => ({ kind: "telescope", count: 1, apertureMm });

function thing(part: string): Showable {
  const found = SHOWABLES.find(({ name }) => name.includes(part));
  if (found === undefined) throw new Error(`no ${part} in the list`);
  return found;
}

function view(
  part: string,
  instrument: Instrument,
  skyMagArcsec2: number,
  audience: Audience,
  body: BodyLook | null = null,
  magnitude?: number,
) {
  const what = thing(part);
  return guestView(
    magnitude === undefined ? what : { ...what, magnitude },
    viewerOf(instrument, VIEWING),
    { skyMagArcsec2, extinctionMag: 0.25 },
    body,
    AUDIENCES[audience],
    GUESTS,
  );
}

const galaxies = SHOWABLES.filter(({ kind }) => kind === "galaxy");

describe("guestView", () => {
  it("has no galaxy for children in a small telescope in a city", () => {
    expect(galaxies.length).toBeGreaterThan(10);
    for (const { name } of galaxies.filter((galaxy) => !galaxy.name.includes("Magellanic"))) {
      expect(view(name, telescope(80), CITY, "families"), name).toBeNull();
      expect(view(name, BINOCULARS, CITY, "school"), name).toBeNull();
    }
  });

  it("has the Andromeda Galaxy for everybody in binoculars under a country sky", () => {
    for (const audience of ["families", "adults"] as const) {
      expect(view("Andromeda", BINOCULARS, COUNTRY, audience)?.ease).toBe("at-a-glance");
    }
  });

  it("shows the Orion Nebula and the Pleiades in a city too", () => {
    expect(view("Orion Nebula", telescope(80), CITY, "families")).not.toBeNull();
    expect(view("Pleiades", BINOCULARS, CITY, "families")?.ease).toBe("at-a-glance");
  });

  it("leaves the Milky Way out where the bare eye stops at the fourth magnitude", () => {
    expect(view("Milky Way in Cygnus", EYES, CITY, "adults")).toBeNull();
    expect(view("Milky Way in Cygnus", EYES, 21.8, "adults")).not.toBeNull();
  });

  it("keeps figures of stars for the bare eye", () => {
    expect(view("Orion", EYES, CITY, "families")).not.toBeNull();
    expect(view("the Plough", telescope(80), COUNTRY, "adults")).toBeNull();
  });

  it("splits Albireo, 35″, in 80 mm, and not Algieba, 5″, in binoculars", () => {
    expect(view("Albireo", telescope(80), CITY, "families")?.ease).toBe("at-a-glance");
    expect(view("Algieba", BINOCULARS, COUNTRY, "adults")).toBeNull();
  });

  it("asks for twice Dawes's limit before a double is shown", () => {
    // 3″ at 116″/D: 39 mm part it at the limit, 78 mm with room to spare.
    const pair = { ...thing("Albireo"), majorArcmin: 3 / 60, minorArcmin: 3 / 60 };
    const seen = (apertureMm: number) =>
      guestView(
        pair,
        viewerOf(telescope(apertureMm), { ...VIEWING, exitPupilsMm: [0.5], mostPower: 1000 }),
        { skyMagArcsec2: COUNTRY, extinctionMag: 0.2 },
        null,
        AUDIENCES.adults,
        GUESTS,
      );
    expect(seen(60)).toBeNull();
    expect(seen(120)).not.toBeNull();
  });

  it("shows the Moon in everything unless it is a mere thread", () => {
    const half = { diameterArcsec: 1860, illuminatedFraction: 0.5 };
    for (const instrument of [EYES, BINOCULARS, telescope(80)]) {
      expect(view("the Moon", instrument, CITY, "families", half)?.ease).toBe("at-a-glance");
    }
    expect(view("the Moon", EYES, CITY, "families", { ...half, illuminatedFraction: 0.01 })).toBeNull();
  });

  it("gives Jupiter, 40″, at 80 times the width of 53′: the textbook product", () => {
    const seen = view(
      "Jupiter",
      telescope(80),
      CITY,
      "families",
      {
        diameterArcsec: 40,
        illuminatedFraction: 1,
      },
      -2.3,
    );
    expect(seen?.use.power).toBe(80);
    expect(seen?.use.exitPupilMm).toBe(1);
    expect(seen?.apparentDeg).toBeCloseTo((40 * 80) / 3600, 9);
  });

  it("calls a planet in binoculars a point, and hides Neptune from children", () => {
    const jupiter = { diameterArcsec: 40, illuminatedFraction: 1 };
    expect(view("Jupiter", BINOCULARS, CITY, "families", jupiter, -2.3)?.apparentDeg).toBeNull();
    const neptune = { diameterArcsec: 2.3, illuminatedFraction: 1 };
    expect(view("Neptune", BINOCULARS, CITY, "families", neptune, 7.8)).toBeNull();
  });
});
