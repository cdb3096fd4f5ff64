/**
 * What an exposure's noise is made of, and what would help against it, in words.
 *
 * @packageDocumentation
 */
import type { Improvement } from "../../core/rig/improvements.ts";
import { largestNoise, type NoiseShares } from "../../core/rig/signal-to-noise.ts";
import type { Section } from "../answer.ts";
import type { ExposureSum } from "../exposure-sum.ts";
import { withMinus } from "./minus.ts";
import { listWords } from "./sky.ts";

const NOISE_WORDS = {
  sky: "sky",
  dark: "dark current",
  "read-noise": "read noise",
  signal: "the object's own light",
} as const;

/** What the noise is made of, and what that means. */
export function limitSection(sum: ExposureSum): Section {
  const { plan, question } = sum;
  const { rates, shares } = plan.leading;
  const { leading, band } = rates;
  const lines = [
    `The noise (its variance) is ${sharesWords(shares)}.`,
    `Sky ${electronWords(leading.glow + leading.moon)} e/s a pixel${leading.moon > 0 ? `, ${electronWords(leading.moon)} of it moonlight` : ""}; dark current ${electronWords(leading.dark)} e/s at ${degreesWords(sum.sensorCelsius)}; read noise ${leading.readNoiseElectrons} e.`,
    `The sky there is ${sum.skyMagArcsec2.toFixed(2)} mag/arcsec² on the mean${leading.moon > 0 ? ", Moon included" : ""}.`,
  ];
  if (largestNoise(shares) === "dark" || shares.dark > 0.25) {
    lines.push(
      "Dark current is a main limit here: longer subs do not help against it, a cooler sensor does.",
    );
  }
  const seeing = seeingPixelsWords(sum);
  if (seeing !== null) lines.push(seeing);
  if (leading.channel.measuredSkyElectrons !== null) {
    lines.push(`The moonless sky is your own measurement through ${question.filter.name}.`);
  }
  if (plan.bands.length > 1)
    lines.push(`These figures are for ${band.name}, which asks for the longest sub.`);
  return { heading: "What limits it", lines };
}

function sharesWords(shares: NoiseShares): string {
  const parts = (["sky", "dark", "read-noise", "signal"] as const)
    .map((source) => ({ source, share: shares[source] }))
    .filter(({ share }) => share >= 0.005)
    .sort((one, other) => other.share - one.share)
    .map(({ source, share }) => `${Math.round(share * 100)} % ${NOISE_WORDS[source]}`);
  return listWords(parts);
}

/** On a colour array: which pixels count, and how many. */
function seeingPixelsWords({ plan }: ExposureSum): string | null {
  const { rates } = plan.leading;
  const { channels, band } = rates;
  if (rates.leading.channel.channel === "mono" || band.line === null) return null;
  const names = listWords(channels.map(({ channel }) => channel.channel));
  const share = channels.reduce((sum, { pixelShare }) => sum + pixelShare, 0);
  const inFour = ["none", "one", "two", "three", "four"][Math.round(share * 4)] ?? "some";
  return `Only the ${names} pixels count at ${band.name}, ${inFour} in four; the others add noise alone.`;
}

/** `−10 °C`. */
function degreesWords(celsius: number): string {
  return `${withMinus(Math.round(celsius))} °C`;
}

/** Three figures, as many decimals as that takes. */
export function electronWords(rate: number): string {
  return rate === 0 ? "0" : String(Number(rate.toPrecision(3)));
}

/** What would help most, each with its figure. */
export function helpSection(helps: readonly Improvement[]): Section {
  return {
    heading: "What would help most",
    lines: helps.filter(({ factor }) => factor >= 1.02).map(helpWords),
  };
}

function helpWords(help: Improvement): string {
  const worth = `one hour would be worth ${help.factor.toFixed(help.factor < 10 ? 2 : 0)} of these`;
  switch (help.kind) {
    case "cooler":
      return `A sensor at ${degreesWords(help.celsius)}: ${worth}.`;
    case "narrower":
      return `A filter of half the width: ${worth}.`;
    case "no-moon":
      return `No Moon: ${worth}.`;
    case "darker-sky":
      return `A sky one magnitude darker: ${worth}.`;
    case "longer-subs":
      return `Subs so long that read noise is nothing: ${worth}.`;
    case "hour-more":
      return `An hour more: signal-to-noise times ${Math.sqrt(help.factor).toFixed(2)}.`;
  }
}
