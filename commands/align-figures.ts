/**
 * `align` as figures.
 *
 * @packageDocumentation
 */
import { DRIFT_WATCH_MINUTES, FLIP_MINUTES } from "../config/mount-rules.ts";
import { declinationDriftArcsec } from "../core/mount/polar-error.ts";
import type { PoleStarPlace } from "../core/mount/pole-star.ts";
import type { StarInSky } from "../core/mount/visible-stars.ts";
import { type Figure, isoOrNull } from "./answer.ts";
import { siteFigures, spanFigure } from "./object-figures.ts";
import type { SettingUp } from "./setting-up.ts";
import { targetName } from "./words/target-words.ts";

export function alignFigures(found: SettingUp): { readonly [name: string]: Figure } {
  const { rig, situation, sky, target, damage, turn, assumptions } = found;
  const { site, times, verdict } = situation;
  const [first] = sky.poleStars;
  const name = target === null ? null : targetName(target.target);
  return {
    site: siteFigures(site),
    night: times.night.date,
    at: sky.at.toISOString(),
    rig: rig.name,
    pole: sky.pole,
    ...poleFigures(first),
    poleSeen: sky.view.kind === "seen",
    poleStars: sky.poleStars.map((place) => poleFigures(place)),
    alignmentStars: (sky.choice?.stars ?? []).map(starFigures),
    alignment: sky.choice === null ? null : sky.choice.kind,
    alignmentMagnitudeLimit: sky.choice?.faintestMag ?? null,
    focusStar:
      sky.focus === null ? null : { ...starFigures(sky.focus.star), separationDeg: sky.focus.separationDeg },
    target: name,
    meridianFlip: isoOrNull(target?.night.meridianFlip ?? null),
    flipMinutes: rig.mount === "german" ? FLIP_MINUTES : null,
    fieldRotationLimitSeconds: turn !== null && Number.isFinite(turn.seconds) ? turn.seconds : null,
    drift: {
      polarErrorArcmin: damage.errorArcmin,
      subSeconds: damage.subSeconds,
      declinationDeg: damage.decDeg,
      driftArcsec: damage.driftArcsec,
      driftPixels: damage.pixels?.drift ?? null,
      fieldRotationArcsec: damage.turnArcsec,
      cornerTrailPixels: damage.pixels?.cornerTrail ?? null,
      forgivenErrorArcmin: damage.pixels?.forgivenErrorArcmin ?? null,
    },
    driftMethod: {
      watchSeconds: DRIFT_WATCH_MINUTES * 60,
      driftArcsecPerArcmin: declinationDriftArcsec(1, DRIFT_WATCH_MINUTES * 60),
    },
    dew:
      verdict.kind === "unknown"
        ? null
        : verdict.dew.map((span) => ({ kind: span.kind, ...spanFigure(span) })),
    byDay: sky.byDay,
    assumptions: [...assumptions, ...situation.assumptions],
  };
}

function poleFigures(place: PoleStarPlace) {
  return {
    star: place.star.name,
    hourAngleHours: place.hourAngleHours,
    dial: { correct: place.dial.correct, inverted: place.dial.inverted },
    poleDistanceArcmin: place.poleDistanceArcmin,
    poleStarAltitudeDeg: place.altitudeDeg,
    poleStarAzimuthDeg: place.azimuthDeg,
    poleStarMagnitude: place.star.magnitude,
  };
}

function starFigures({ name, altitudeDeg, azimuthDeg, magnitude }: StarInSky) {
  return { name, altitudeDeg, azimuthDeg, magnitude };
}
