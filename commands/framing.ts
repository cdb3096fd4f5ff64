/**
 * `framing`: how much sky a rig sees, whether the object fits, turned how, in how many panels.
 *
 * @packageDocumentation
 */
import {
  ANGLE_STEP_DEG,
  OVERLAP_PERCENT,
  OVERLAP_RANGE_PERCENT,
  PANELS_ALONG,
} from "../config/framing-rules.ts";
import { REDUCER_FACTOR, SEEING_ARCSEC as SEEING_RANGE } from "../config/input-limits.ts";
import { SEEING_ARCSEC } from "../config/rig-defaults.ts";
import type { Fit } from "../core/rig/framing.ts";
import { type FramingPlan, framingPlan } from "../core/rig/framing-plan.ts";
import type { CameraRig } from "../core/rig/rig.ts";
import type { Site } from "../core/site.ts";
import { turnDeg } from "../core/sky/angles.ts";
import type { Target } from "../core/targets/sky-object.ts";
import type { Answer, Figure, FollowUp, Section } from "./answer.ts";
import type { Command } from "./command.ts";
import type { Context } from "./context.ts";
import { framingPicture, pictureBehind } from "./framing-picture.ts";
import { type FramedTarget, framedTarget, framingCautions, siteIfAny } from "./framing-target.ts";
import { keptOptions } from "./kept-options.ts";
import { bodyKind } from "./object-figures.ts";
import { numberOption, wholeNumberOption } from "./read/numbers.ts";
import { defineCompleted, defineNumber, defineWhole, RIG, SITE, TARGET } from "./read/options.ts";
import { cameraRigOf } from "./read/rig.ts";
import { targetOf } from "./read/target.ts";
import type { Request } from "./request.ts";
import {
  angleWords,
  comparisonSection,
  fieldSection,
  fieldWords,
  framingSummary,
  panelSection,
} from "./words/framing-words.ts";
import { shortName, targetName } from "./words/target-words.ts";

export const framing: Command = {
  definition: {
    name: "framing",
    description: "How an object sits in your field: whether it fits, turned how, in how many panels",
    options: [
      TARGET,
      RIG,
      defineNumber("angle", "Camera angle: of the frame's top, from north through east, degrees"),
      defineWhole("columns", `Panels along the width, ${PANELS_ALONG.min} to ${PANELS_ALONG.max}`),
      defineWhole("rows", `Panels along the height, ${PANELS_ALONG.min} to ${PANELS_ALONG.max}`),
      defineNumber("overlap", `Overlap of panels, percent of each side; default ${OVERLAP_PERCENT}`),
      defineCompleted("other-rig", "Another rig, saved or described, to set beside it"),
      defineNumber("reducer", "A reducer (0.8) or Barlow (2) to set beside the rig as it is"),
      defineNumber("seeing", "Blur of a star, full width at half maximum, arcseconds"),
      SITE,
    ],
  },
  audience: "member",

  async answer(request, context) {
    const what = targetOf(request, context);
    const rig = await cameraRigOf(request, context);
    const asked = askedOf(request);
    const others = await othersOf(request, context, rig);
    const site = await siteIfAny(request, context);
    const framed = await framedTarget(what, request, context);
    const planOf = (camera: CameraRig): FramingPlan =>
      framingPlan({
        rig: camera,
        target: framed.place,
        ellipse: framed.ellipse,
        angleDeg: asked.angleDeg,
        columns: asked.columns,
        rows: asked.rows,
        overlap: asked.overlapPercent / 100,
        panelsAlongAtMost: PANELS_ALONG.max,
      });
    const compared = others.map(({ name, camera }) => ({ name, plan: planOf(camera) }));
    return describe(request, context, { what, rig, asked, site, framed, plan: planOf(rig), compared });
  },
};

type Asked = {
  readonly angleDeg: number | null;
  readonly columns: number | null;
  readonly rows: number | null;
  readonly overlapPercent: number;
  readonly seeingArcsec: number | null;
};

function askedOf(request: Request): Asked {
  return {
    angleDeg: numberOption(request, "angle", { min: -360, max: 360, unit: "°" }),
    columns: wholeNumberOption(request, "columns", { ...PANELS_ALONG, unit: "panels" }),
    rows: wholeNumberOption(request, "rows", { ...PANELS_ALONG, unit: "panels" }),
    overlapPercent:
      numberOption(request, "overlap", { ...OVERLAP_RANGE_PERCENT, unit: "%" }) ?? OVERLAP_PERCENT,
    seeingArcsec: numberOption(request, "seeing", { ...SEEING_RANGE, unit: "arcseconds" }),
  };
}

type OtherCamera = { readonly name: string; readonly camera: CameraRig };

/** The same rig behind another reducer: its own is taken out first. */
function withReducer(rig: CameraRig, factor: number): CameraRig {
  const change = factor / rig.reducerFactor;
  return {
    ...rig,
    focalLengthMm: rig.focalLengthMm * change,
    focalRatio: rig.focalRatio * change,
    reducerFactor: factor,
  };
}

async function othersOf(request: Request, context: Context, rig: CameraRig): Promise<readonly OtherCamera[]> {
  const factor = numberOption(request, "reducer", REDUCER_FACTOR);
  const named =
    request.options["other-rig"] === undefined ? null : await cameraRigOf(request, context, "other-rig");
  return [
    ...(factor === null
      ? []
      : [{ name: `${rig.name}, ${Number(factor.toFixed(3))} ×`, camera: withReducer(rig, factor) }]),
    ...(named === null ? [] : [{ name: named.name, camera: named }]),
  ];
}

type Framed = {
  readonly what: Target;
  readonly rig: CameraRig;
  readonly asked: Asked;
  readonly site: Site | null;
  readonly framed: FramedTarget;
  readonly plan: FramingPlan;
  readonly compared: readonly { readonly name: string; readonly plan: FramingPlan }[];
};

async function describe(request: Request, context: Context, parts: Framed): Promise<Answer> {
  const { what, rig, asked, site, framed, plan, compared } = parts;
  const name = targetName(what);
  const summary = framingSummary(plan, framed);
  const cautions = framingCautions(what, framed.place, site, request.at);
  const seeingArcsec = asked.seeingArcsec ?? site?.seeingArcsec ?? SEEING_ARCSEC;
  const assumptions = assumptionsOf(parts);
  const behind = await pictureBehind(context, plan, framed);
  const sections: Section[] = [
    fieldSection(plan, framed, seeingArcsec),
    panelSection(plan, asked.overlapPercent),
  ];
  if (compared.length > 0) {
    sections.splice(1, 0, comparisonSection([{ name: rig.name, plan }, ...compared], seeingArcsec));
  }
  if (assumptions.length > 0) sections.push({ heading: "Assumed", lines: assumptions });
  return {
    title: `${name} with ${rig.name}`,
    summary,
    sections,
    charts: [
      framingPicture(
        {
          what,
          framed,
          plan,
          behind,
          title: chartTitle(what, plan),
          caption: behind === null ? "" : behind.picture.credit,
          alt: altWords(name, plan, summary),
          cautions: cautions.map(({ text }) => text),
        },
        context,
      ),
    ],
    cautions,
    next: followUps(request, what, parts),
    figures: figuresOf(parts, seeingArcsec, assumptions),
    credits: behind === null ? [] : [behind.picture.credit],
  };
}

function chartTitle(what: Target, { fit, panels, grid, mosaicFit }: FramingPlan): string {
  const name = what.kind === "object" ? (what.object.name ?? what.object.id) : targetName(what);
  if (panels.length > 1) {
    const how = mosaicFit?.fits === true ? `hold ${name} whole` : `around ${name}`;
    return `${grid.columns} × ${grid.rows} panels ${how}`;
  }
  if (fit === null) return `${name}, framed as a point`;
  return fit.fits
    ? `${name} fits one frame`
    : `One frame holds ${Math.round(fit.objectInField * 100)} % of ${name}`;
}

function altWords(name: string, plan: FramingPlan, summary: string): string {
  const field = fieldWords(plan.fieldWidthDeg, plan.fieldHeightDeg);
  const angle = angleWords(plan.frame.positionAngleDeg);
  return `The sky around ${name} with the sensor's frame of ${field} upright, its top ${angle} from north through east. ${summary}`;
}

function assumptionsOf({ rig, asked, site }: Framed): string[] {
  if (asked.seeingArcsec !== null || (site !== null && site.seeingArcsec !== null)) return [];
  const where = site === null ? "" : ` at ${site.name}`;
  return [`A star's blur${where} is taken as ${SEEING_ARCSEC}″: nobody has said what it is for ${rig.name}.`];
}

function followUps(request: Request, what: Target, { plan, asked }: Framed): FollowUp[] {
  const kept = keptOptions(request, Object.keys(request.options));
  const again = (label: string, changed: Record<string, number>): FollowUp => ({
    label,
    command: "framing",
    options: { ...kept, ...changed },
  });
  const angle = Number(plan.frame.positionAngleDeg.toFixed(1));
  const { columns, rows } = plan.grid;
  const grid = { columns, rows, angle };
  const expose: FollowUp = {
    label: "Expose it",
    command: "exposure",
    options: {
      target: what.kind === "object" ? what.object.id : String(request.options.target),
      ...keptOptions(request, ["rig"]),
    },
  };
  const mosaic = asked.columns !== null || asked.rows !== null ? grid : {};
  return [
    again(`Turn by +${ANGLE_STEP_DEG}°`, { ...mosaic, angle: turnDeg(angle + ANGLE_STEP_DEG) }),
    again(`Turn by −${ANGLE_STEP_DEG}°`, { ...mosaic, angle: turnDeg(angle - ANGLE_STEP_DEG) }),
    ...(columns < PANELS_ALONG.max ? [again("One column more", { ...grid, columns: columns + 1 })] : []),
    ...(rows < PANELS_ALONG.max ? [again("One row more", { ...grid, rows: rows + 1 })] : []),
    expose,
  ];
}

function fitFigures(fit: Fit | null): { readonly [name: string]: Figure } {
  return {
    fillFraction: fit?.fillFraction ?? null,
    objectInField: fit?.objectInField ?? null,
    fits: fit?.fits ?? null,
  };
}

function planFigures(plan: FramingPlan): { readonly [name: string]: Figure } {
  return {
    fieldWidthDeg: plan.fieldWidthDeg,
    fieldHeightDeg: plan.fieldHeightDeg,
    scaleArcsecPerPx: plan.scaleArcsecPerPixel,
    ...fitFigures(plan.fit),
    positionAngleDeg: plan.frame.positionAngleDeg,
    bestAngleDeg: plan.bestAngleDeg,
    columns: plan.grid.columns,
    rows: plan.grid.rows,
  };
}

function nameOf(what: Target): string | null {
  switch (what.kind) {
    case "object":
      return what.object.name;
    case "body":
      return what.body;
    case "place":
      return null;
  }
}

function figuresOf(
  parts: Framed,
  seeingArcsec: number,
  assumptions: readonly string[],
): { readonly [name: string]: Figure } {
  const { what, framed, plan, asked, compared } = parts;
  return {
    object: {
      id: shortName(what),
      name: nameOf(what),
      kind: what.kind === "body" ? bodyKind(what.body) : what.kind === "object" ? what.object.kind : "place",
      raDeg: framed.place.raDeg,
      decDeg: framed.place.decDeg,
      majorArcmin: framed.extent.majorArcmin,
      minorArcmin: framed.extent.minorArcmin,
      positionAngleDeg: framed.extent.positionAngleDeg,
    },
    ...planFigures(plan),
    fittingAngles: plan.fittingAngles.map(({ fromDeg, toDeg }) => ({ fromDeg, toDeg })),
    panels: plan.panels.map(({ order, row, column, raDeg, decDeg, positionAngleDeg }) => ({
      order,
      row,
      column,
      raDeg,
      decDeg,
      positionAngleDeg,
    })),
    overlapPercent: asked.overlapPercent,
    mosaic: plan.mosaicFit === null ? null : fitFigures(plan.mosaicFit),
    fixedCamera: { turnDeg: plan.gap.turnDeg, opensGap: plan.gap.opens },
    beyond: plan.beyond === null ? null : { ...plan.beyond },
    seeingArcsec,
    pixelsAcrossBlur: seeingArcsec / plan.scaleArcsecPerPixel,
    compared: compared.map(({ name, plan: other }) => ({ name, ...planFigures(other) })),
    assumptions: [...assumptions],
  };
}
