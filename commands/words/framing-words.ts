/**
 * A framing in words: the field, the fit, the panels, the sampling.
 *
 * @packageDocumentation
 */
import { PANELS_IN_WORDS, PIXELS_ACROSS_BLUR } from "../../config/framing-rules.ts";
import type { AngleSpan } from "../../core/rig/framing.ts";
import type { FramingPlan } from "../../core/rig/framing-plan.ts";
import type { Section } from "../answer.ts";
import type { FramedTarget } from "../framing-target.ts";
import { declinationWords, listWords, rightAscensionWords } from "./sky.ts";

/** `3.36° × 2.25°`, in arcminutes where both sides are under a degree. */
export function fieldWords(widthDeg: number, heightDeg: number): string {
  const small = Math.max(widthDeg, heightDeg) < 1;
  const figure = (deg: number) => String(Number((small ? deg * 60 : deg).toPrecision(3)));
  const unit = small ? "′" : "°";
  return `${figure(widthDeg)}${unit} × ${figure(heightDeg)}${unit}`;
}

/** `125°`, to a tenth where it matters. */
export function angleWords(angleDeg: number): string {
  return `${Number(angleDeg.toFixed(1))}°`;
}

/** `12 %`; `under 1 %`. */
function shareWords(share: number): string {
  const percent = share * 100;
  if (percent > 0 && percent < 1) return "under 1 %";
  return `${Math.round(percent)} %`;
}

/** One sentence to act on. */
export function framingSummary(plan: FramingPlan, framed: FramedTarget): string {
  const { fit, grid, frame } = plan;
  const camera = `camera at ${angleWords(frame.positionAngleDeg)}`;
  const mosaic = `${grid.columns} × ${grid.rows} panels`;
  if (fit === null) {
    return plan.panels.length > 1
      ? `Its size is not known: ${mosaic} centred on it as a point, ${camera}.`
      : `Its size is not known: framed as a point in the middle of the field, ${camera}.`;
  }
  if (plan.beyond !== null) {
    const { columns, rows } = plan.beyond;
    return `One frame holds ${shareWords(fit.objectInField)} of it; the whole would take ${columns} × ${rows} panels: choose a shorter focal length, or a part of it with “columns” and “rows”.`;
  }
  if (plan.mosaicFit !== null) {
    const held = plan.mosaicFit.fits
      ? "hold it whole"
      : `hold ${shareWords(plan.mosaicFit.objectInField)} of it`;
    const one = fit.fits ? "it fits one frame too" : `one frame holds ${shareWords(fit.objectInField)}`;
    return `${mosaic} ${held}, ${camera}; ${one}.`;
  }
  if (fit.fits) return `It fits whole and covers ${shareWords(fit.fillFraction)} of the field, ${camera}.`;
  const better = plan.fittingAngles.length > 0 ? `; it fits whole at ${spansWords(plan.fittingAngles)}` : "";
  const size = framed.ellipse === null ? "" : ` and covers ${shareWords(fit.fillFraction)} of the field`;
  return `One frame holds ${shareWords(fit.objectInField)} of it${size}, ${camera}${better}.`;
}

/** Camera angles at which it fits: `any angle`, `20° to 75°`. */
export function spansWords(spans: readonly AngleSpan[]): string {
  return listWords(
    spans.map(({ fromDeg, toDeg }) =>
      toDeg - fromDeg >= 180 ? "any angle" : `${fromDeg}° to ${toDeg % 180}°`,
    ),
  );
}

/** Pixels across a star's blur, and whether that is few or many. */
function samplingWords(scaleArcsec: number, seeingArcsec: number): string {
  const pixels = seeingArcsec / scaleArcsec;
  const count = `${pixels.toFixed(1)} pixels across a star's blur of ${Number(seeingArcsec.toFixed(1))}″`;
  if (pixels < PIXELS_ACROSS_BLUR.min) return `${count}: stars come out blocky; dithering helps.`;
  if (pixels > PIXELS_ACROSS_BLUR.max) return `${count}: more than the air gives; binning loses nothing.`;
  return `${count}: well matched.`;
}

/** What the field is, how it is sampled, how the object may be turned. */
export function fieldSection(plan: FramingPlan, framed: FramedTarget, seeingArcsec: number): Section {
  const lines = [
    `${fieldWords(plan.fieldWidthDeg, plan.fieldHeightDeg)} at ${plan.scaleArcsecPerPixel.toFixed(2)}″ a pixel.`,
    samplingWords(plan.scaleArcsecPerPixel, seeingArcsec),
  ];
  if (plan.fit !== null && plan.panels.length === 1) {
    lines.push(
      plan.fittingAngles.length === 0
        ? "It does not fit one frame at any angle."
        : `It fits at ${plan.fittingAngles.some(isAny) ? "any camera angle" : `camera angles from ${spansWords(plan.fittingAngles)}`}.`,
    );
  }
  if (!framed.angleKnown)
    lines.push("How it lies in the sky is not known: its long axis is taken as north to south.");
  lines.push("The camera angle is that of the frame's top, from north through east.");
  return { heading: "Field", lines };
}

function isAny({ fromDeg, toDeg }: AngleSpan): boolean {
  return toDeg - fromDeg >= 180;
}

/** Where each panel points, in shooting order. */
export function panelSection(plan: FramingPlan, overlapPercent: number): Section {
  const shown = plan.panels.slice(0, PANELS_IN_WORDS);
  const single = plan.panels.length === 1;
  const lines: string[] = [];
  if (!single) {
    lines.push(`${overlapPercent} % of each side shared; J2000, in the order to shoot.`);
    lines.push(gapWords(plan));
  }
  if (shown.length < plan.panels.length) {
    lines.push(`The first ${shown.length} of ${plan.panels.length}; all stand in the figures.`);
  }
  return {
    heading: single ? "Point at (J2000)" : "Panels",
    lines,
    table: {
      columns: ["", "right ascension", "declination", "degrees", "camera"],
      rows: shown.map((panel) => [
        String(panel.order),
        rightAscensionWords(panel.raDeg),
        declinationWords(panel.decDeg),
        `${panel.raDeg.toFixed(4)} ${panel.decDeg.toFixed(4)}`,
        angleWords(panel.positionAngleDeg),
      ]),
    },
  };
}

function gapWords({ gap }: FramingPlan): string {
  const turn = angleWords(gap.turnDeg);
  if (gap.opens) {
    return `Turn the camera as listed: left at one angle to north, panels would lie up to ${turn} askew and leave gaps.`;
  }
  return gap.turnDeg < 0.05
    ? "The camera may stay as it is from panel to panel."
    : `The camera may stay as it is: panels then lie up to ${turn} askew, which the overlap takes up.`;
}

/** Two cameras side by side. */
export function comparisonSection(
  rows: readonly { readonly name: string; readonly plan: FramingPlan }[],
  seeingArcsec: number,
): Section {
  return {
    heading: "Side by side",
    lines: [],
    table: {
      columns: ["", "field", "a pixel", "across a blur", "in one frame", "panels"],
      rows: rows.map(({ name, plan }) => [
        name,
        fieldWords(plan.fieldWidthDeg, plan.fieldHeightDeg),
        `${plan.scaleArcsecPerPixel.toFixed(2)}″`,
        `${(seeingArcsec / plan.scaleArcsecPerPixel).toFixed(1)} pixels`,
        plan.fit === null
          ? "–"
          : plan.fit.fits
            ? `whole, ${shareWords(plan.fit.fillFraction)} of the field`
            : `${shareWords(plan.fit.objectInField)} of it`,
        plan.beyond === null
          ? `${plan.grid.columns} × ${plan.grid.rows}`
          : `${plan.beyond.columns} × ${plan.beyond.rows}`,
      ]),
    },
  };
}
