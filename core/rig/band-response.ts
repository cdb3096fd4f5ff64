/**
 * How many electrons a rig makes of the sky's light, through each pass band and dye.
 *
 * Everything here depends on rig and filter alone: worked out once, it turns
 * nanolamberts and Rayleigh into electrons by a multiplication.
 *
 * @packageDocumentation
 */
import { magArcsec2 } from "../night/sky-brightness.ts";
import type { Photometry } from "../photometry.ts";
import type { EmissionLine } from "../targets/sky-object.ts";
import { LINE_NAME, LINE_WAVELENGTH_NM, linesWithin } from "./emission-lines.ts";
import { apertureAreaM2, scaleArcsecPerPixel } from "./optics.ts";
import type { Band, CameraRig, EfficiencyPoint, Filter, SensorChannel } from "./rig.ts";

/**
 * Photons of a surface of V = 0 per second, m², nm and square arcsecond.
 *
 * Source: M. S. Bessell 1979, PASP 91, 589: 3640 Jy at 550 nm, 1 Jy = 1.51e7 photons
 * s⁻¹ m⁻² (Δλ/λ)⁻¹, which is 0.999e8; the convention is 1.0e8, flat from 400 to 700 nm. Rough.
 */
const PHOTONS_AT_MAGNITUDE_ZERO = 1e8;

/** Photons per second, m² and square arcsecond of one Rayleigh: 10¹⁰/4π per steradian. */
const PHOTONS_PER_RAYLEIGH = 0.018704;

/** Photons per second, m², nm and square arcsecond of a surface of that V brightness. */
export function photonsOfMagnitude(magnitude: number): number {
  return PHOTONS_AT_MAGNITUDE_ZERO * 10 ** (-0.4 * magnitude);
}

/** Photons per second, m², nm and square arcsecond of one nanolambert. */
const PHOTONS_PER_NANOLAMBERT = photonsOfMagnitude(magArcsec2(1));

/** Sky that falls on a pixel through one pass band. */
export type BandSky = {
  /** Where its moonlight is to be taken. */
  readonly wavelengthNm: number;
  /** Electrons per second and pixel for each nanolambert of V sky. */
  readonly electronsPerNanolambert: number;
};

/** One dye behind one pass band. Electrons are per second and signal-seeing pixel. */
export type ChannelResponse = {
  readonly channel: SensorChannel["name"];
  /** Share of all pixels, in (0, 1]. */
  readonly pixelShare: number;
  /** Where extinction is to be taken. */
  readonly wavelengthNm: number;
  /** The band's own electrons per nanolambert: also of an object's continuum. */
  readonly electronsPerNanolambert: number;
  /** Every pass band whose sky reaches these pixels, their own first. */
  readonly skies: readonly BandSky[];
  /** Electrons for each Rayleigh of a line that passes; a line that does not is missing. */
  readonly electronsPerRayleigh: Readonly<Partial<Record<EmissionLine, number>>>;
  /** The member's own measurement of the moonless sky; `null` without. */
  readonly measuredSkyElectrons: number | null;
};

export type BandResponse = {
  /** `Hα`, `[O III]`, a band's own name, `no filter`. */
  readonly name: string;
  /** The line a narrow band is for; `null` of a broad one. */
  readonly line: EmissionLine | null;
  readonly widthNm: number;
  /** The channel that gathers most, whose figures stand for the band. */
  readonly leading: ChannelResponse;
  /** All that see it, the leading one first. */
  readonly channels: readonly ChannelResponse[];
};

/** A value between the points of a curve; beyond its ends, the end's. */
export function onCurve(points: readonly EfficiencyPoint[], wavelengthNm: number): number {
  const after = points.findIndex((point) => point.wavelengthNm >= wavelengthNm);
  const upper = after === -1 ? points[points.length - 1] : points[after];
  const lower = after > 0 ? points[after - 1] : upper;
  if (upper === undefined || lower === undefined) throw new RangeError("a curve without points");
  const span = upper.wavelengthNm - lower.wavelengthNm;
  if (span === 0 || wavelengthNm >= upper.wavelengthNm) return upper.efficiency;
  const along = (wavelengthNm - lower.wavelengthNm) / span;
  return lower.efficiency + along * (upper.efficiency - lower.efficiency);
}

/** Efficiency of a channel as the rig uses it: behind its infrared block, if it has one. */
function efficiencyAt(
  rig: CameraRig,
  channel: SensorChannel,
  wavelengthNm: number,
  photometry: Photometry,
): number {
  const blocked = channel.name !== "mono" && !rig.modified;
  const passed = blocked ? onCurve(photometry.infraredBlock, wavelengthNm) : 1;
  return passed * onCurve(channel.efficiency, wavelengthNm);
}

/** A stretch of spectrum that reaches one channel's pixels. */
type Reach = { readonly wavelengthNm: number; readonly widthNm: number };

/** What of a pass band one channel sees; `null` when nothing that counts. */
function reachOf(rig: CameraRig, channel: SensorChannel, band: Band, photometry: Photometry): Reach | null {
  const narrow = band.widthNm <= photometry.lineFilterMaxWidthNm;
  if (narrow) {
    const line = linesWithin(band)[0];
    const wavelengthNm = line === undefined ? band.centreNm : LINE_WAVELENGTH_NM[line];
    const best = Math.max(...rig.sensor.channels.map((other) => onCurve(other.efficiency, wavelengthNm)));
    const own = onCurve(channel.efficiency, wavelengthNm);
    return own >= photometry.seesLineShare * best ? { wavelengthNm, widthNm: band.widthNm } : null;
  }
  if (channel.name === "mono") return { wavelengthNm: band.centreNm, widthNm: band.widthNm };
  const open = photometry.openBands[channel.name];
  const from = Math.max(open.centreNm - open.widthNm / 2, band.centreNm - band.widthNm / 2);
  const to = Math.min(open.centreNm + open.widthNm / 2, band.centreNm + band.widthNm / 2);
  return to > from ? { wavelengthNm: (from + to) / 2, widthNm: to - from } : null;
}

/** The pass bands of a filter; the whole 400–700 nm of none. */
function bandsOf(filter: Filter, photometry: Photometry): readonly Band[] {
  if (filter.bands.length > 0) return filter.bands;
  return [{ name: "no filter", ...photometry.openBands.mono }];
}

function channelResponse(
  rig: CameraRig,
  channel: SensorChannel,
  filterTransmission: number,
  band: Band,
  bands: readonly Band[],
  photometry: Photometry,
): ChannelResponse | null {
  const reach = reachOf(rig, channel, band, photometry);
  if (reach === null) return null;
  const pixelArcsec = scaleArcsecPerPixel(rig.sensor.pixelUm, rig.focalLengthMm);
  const gathered = apertureAreaM2(rig) * pixelArcsec * pixelArcsec * rig.throughput * filterTransmission;
  const skyOf = (part: Reach): BandSky => ({
    wavelengthNm: part.wavelengthNm,
    electronsPerNanolambert:
      PHOTONS_PER_NANOLAMBERT *
      part.widthNm *
      gathered *
      efficiencyAt(rig, channel, part.wavelengthNm, photometry),
  });
  const own = skyOf(reach);
  const others = bands
    .filter((other) => other !== band)
    .map((other) => reachOf(rig, channel, other, photometry))
    .filter((part) => part !== null)
    .map(skyOf);
  const electronsPerRayleigh: Partial<Record<EmissionLine, number>> = {};
  for (const line of linesWithin(band)) {
    electronsPerRayleigh[line] =
      PHOTONS_PER_RAYLEIGH * gathered * efficiencyAt(rig, channel, LINE_WAVELENGTH_NM[line], photometry);
  }
  return {
    channel: channel.name,
    pixelShare: channel.pixelShare,
    wavelengthNm: reach.wavelengthNm,
    electronsPerNanolambert: own.electronsPerNanolambert,
    skies: [own, ...others],
    electronsPerRayleigh,
    measuredSkyElectrons: null,
  };
}

/** Electrons that all pixels of a channel gather: what makes it lead. */
function gatheredBy(channel: ChannelResponse): number {
  return channel.pixelShare * channel.electronsPerNanolambert;
}

function glowPerNanolambert(channel: ChannelResponse): number {
  return channel.skies.reduce((sum, sky) => sum + sky.electronsPerNanolambert, 0);
}

/** Spreads one measured background over bands and dyes, in proportion to what each would see. */
function withMeasuredSky(
  bands: readonly BandResponse[],
  electronsPerPixelPerSecond: number,
): readonly BandResponse[] {
  const first = bands[0];
  if (first === undefined) return bands;
  const perUnit = electronsPerPixelPerSecond / glowPerNanolambert(first.leading);
  const measured = (channel: ChannelResponse): ChannelResponse => ({
    ...channel,
    measuredSkyElectrons: perUnit * glowPerNanolambert(channel),
  });
  return bands.map((band) => ({
    ...band,
    leading: measured(band.leading),
    channels: band.channels.map(measured),
  }));
}

/**
 * The rig's response through every pass band of a filter.
 *
 * @param filter - with no bands, the whole visible range as the sensor's dyes divide it
 * @returns one entry a pass band, in the filter's order; a band that no pixel sees is left out
 *
 * @remarks
 * A pixel of one dye under a filter of several bands takes the sky of every band its dye sees: a
 * monochrome pixel of all of them. A dye far weaker than the best at a line is taken as blind there.
 * A measured sky of the rig is for the leading channel of the filter's first band; other bands and
 * dyes take it in proportion.
 */
export function bandResponses(
  rig: CameraRig,
  filter: Filter,
  photometry: Photometry,
): readonly BandResponse[] {
  const passed = bandsOf(filter, photometry);
  const bands: BandResponse[] = [];
  for (const band of passed) {
    const channels = rig.sensor.channels
      .map((channel) => channelResponse(rig, channel, filter.transmission, band, passed, photometry))
      .filter((channel) => channel !== null)
      .sort((one, other) => gatheredBy(other) - gatheredBy(one));
    const leading = channels[0];
    if (leading === undefined) continue;
    const narrow = band.widthNm <= photometry.lineFilterMaxWidthNm;
    const line = narrow ? (linesWithin(band)[0] ?? null) : null;
    bands.push({
      name: line === null ? band.name : LINE_NAME[line],
      line,
      widthNm: band.widthNm,
      leading,
      channels,
    });
  }
  const measured = rig.measuredSkies.find((sky) => sky.filterName === filter.name);
  return measured === undefined ? bands : withMeasuredSky(bands, measured.electronsPerPixelPerSecond);
}
