/**
 * A saved rig in words and figures.
 *
 * @packageDocumentation
 */
import { apertureMm } from "../../core/rig/optics.ts";
import type { CameraRig, Filter, Rig, VisualRig } from "../../core/rig/rig.ts";
import type { Figure } from "../answer.ts";
import type { SavedRig } from "../books.ts";
import { bandWords } from "../read/filter.ts";
import { eyepieceWords } from "../read/visual-rig.ts";
import { withMinus } from "./minus.ts";
import { listWords } from "./sky.ts";

/** A line each: lens, sensor, mount, filters, then what is assumed. */
export function rigLines(rig: Rig): readonly string[] {
  const lines = rig.kind === "camera" ? cameraLines(rig) : visualLines(rig);
  return [...lines, ...rig.assumptions.map((sentence) => `Assumed: ${sentence}`)];
}

function cameraLines(rig: CameraRig): readonly string[] {
  const { sensor, mode } = rig;
  const kind =
    sensor.channels.length > 1 ? (rig.modified ? "colour, modified" : "colour, unmodified") : "mono";
  const temperature =
    rig.sensorTemperature.kind === "set"
      ? `${withMinus(rig.sensorTemperature.celsius)} °C`
      : `${rig.sensorTemperature.celsius} °C above the air`;
  const reducer = rig.reducerFactor === 1 ? "" : `, its ${short(rig.reducerFactor)}x included`;
  return [
    `${short(rig.focalLengthMm)} mm f/${short(rig.focalRatio)}${reducer}: an aperture of ${short(apertureMm(rig))} mm`,
    `Sensor ${sensor.widthMm} × ${sensor.heightMm} mm, ${sensor.pixelUm} µm, ${kind}, ${temperature}`,
    `${mode.setting}: ${mode.readNoiseElectrons} e of read noise, full at ${mode.saturationElectrons} e`,
    `Mount: ${rig.mount}, ${rig.guided ? "guided" : "unguided"}`,
    ...rig.filters.map((filter) => filterLine(rig, filter)),
  ];
}

function filterLine(rig: CameraRig, filter: Filter): string {
  const sub = rig.subSeconds[filter.name];
  const measured = rig.measuredSkies.find(({ filterName }) => filterName === filter.name);
  return [
    `Filter ${filter.name}: ${filter.bands.map(bandWords).join("+")} nm`,
    `passes ${Math.round(filter.transmission * 100)} %`,
    ...(sub === undefined ? [] : [`subs of ${sub} s`]),
    ...(measured === undefined
      ? []
      : [`sky measured at ${short(measured.electronsPerPixelPerSecond)} e/s a pixel`]),
  ].join(", ");
}

function visualLines(rig: VisualRig): readonly string[] {
  return [
    `${short(rig.apertureMm)} mm of aperture, ${short(rig.focalLengthMm)} mm of focal length (f/${short(rig.focalLengthMm / rig.apertureMm)}), by eye`,
    `Eyepieces: ${listWords(rig.eyepieces.map(eyepieceWords))}`,
    `Mount: ${rig.mount}`,
  ];
}

export function rigFigures({ rig, isDefault }: SavedRig): { readonly [name: string]: Figure } {
  const shared = { name: rig.name, kind: rig.kind, default: isDefault, mount: rig.mount };
  if (rig.kind === "visual") {
    return {
      ...shared,
      apertureMm: rig.apertureMm,
      focalLengthMm: rig.focalLengthMm,
      focalRatio: rig.focalLengthMm / rig.apertureMm,
      eyepieces: rig.eyepieces,
      assumptions: rig.assumptions,
    };
  }
  return {
    ...shared,
    apertureMm: apertureMm(rig),
    focalLengthMm: rig.focalLengthMm,
    focalRatio: rig.focalRatio,
    reducerFactor: rig.reducerFactor,
    optics: rig.optics,
    obstruction: rig.obstruction,
    throughput: rig.throughput,
    sensor: {
      name: rig.sensor.name,
      widthMm: rig.sensor.widthMm,
      heightMm: rig.sensor.heightMm,
      pixelUm: rig.sensor.pixelUm,
      colour: rig.sensor.channels.length > 1,
      darkElectronsPerSecond: rig.sensor.darkElectronsPerSecond,
      darkReferenceCelsius: rig.sensor.darkReferenceCelsius,
      channels: rig.sensor.channels,
    },
    setting: rig.mode.setting,
    readNoiseElectrons: rig.mode.readNoiseElectrons,
    electronsPerAdu: rig.mode.electronsPerAdu,
    saturationElectrons: rig.mode.saturationElectrons,
    modified: rig.modified,
    sensorTemperature: rig.sensorTemperature,
    guided: rig.guided,
    flipAfterMinutes: rig.flipAfterMinutes,
    filters: rig.filters,
    subSeconds: rig.subSeconds,
    measuredSkies: rig.measuredSkies,
    assumptions: rig.assumptions,
  };
}

function short(value: number): string {
  return String(Number(value.toPrecision(3)) === value ? value : Number(value.toFixed(value < 10 ? 2 : 0)));
}
