/**
 * Pictures of the sky from the CDS's hips2fits service: one host, two seconds, or none.
 *
 * @packageDocumentation
 */
import { Agent, fetch } from "undici";
import type { SkyPicture, SkyPictureQuestion, SkyPictures } from "../../commands/context.ts";
import { SKY_SURVEY } from "../../config/sky-survey.ts";
import { RAD_PER_DEG } from "../../core/sky/angles.ts";

/** How files of each kind begin. */
const SIGNATURES = [
  { mediaType: "image/jpeg", bytes: [0xff, 0xd8, 0xff] },
  { mediaType: "image/png", bytes: [0x89, 0x50, 0x4e, 0x47] },
] as const;

/**
 * The address of a picture.
 *
 * @param host - as configured, without a slash at the end
 *
 * @remarks
 * The picture's geometry is given as FITS header cards (M. R. Calabretta & E. W. Greisen 2002, A&A 395,
 * 1077), so that its turn is said by a matrix and not by the service's own sign: up is the position
 * angle asked for, from north through east, and east lies left of north.
 */
export function pictureAddress(host: string, question: SkyPictureQuestion): string {
  const longer = Math.max(question.widthDeg, question.heightDeg);
  const degPerPixel = longer / SKY_SURVEY.pixels;
  const width = Math.max(1, Math.round(question.widthDeg / degPerPixel));
  const height = Math.max(1, Math.round(question.heightDeg / degPerPixel));
  const sine = Math.sin(question.positionAngleDeg * RAD_PER_DEG);
  const cosine = Math.cos(question.positionAngleDeg * RAD_PER_DEG);
  const cards = {
    NAXIS1: width,
    NAXIS2: height,
    WCSAXES: 2,
    CRPIX1: (width + 1) / 2,
    CRPIX2: (height + 1) / 2,
    CDELT1: -degPerPixel,
    CDELT2: degPerPixel,
    CUNIT1: "deg",
    CUNIT2: "deg",
    CTYPE1: "RA---TAN",
    CTYPE2: "DEC--TAN",
    CRVAL1: question.raDeg,
    CRVAL2: question.decDeg,
    PC1_1: cosine,
    PC1_2: -sine,
    PC2_1: sine,
    PC2_2: cosine,
    RADESYS: "ICRS",
  };
  const address = new URL(SKY_SURVEY.path, host);
  address.searchParams.set("hips", SKY_SURVEY.survey);
  address.searchParams.set("format", "jpg");
  address.searchParams.set("wcs", JSON.stringify(cards));
  return address.href;
}

/** A picture by its first bytes, whatever the service calls it; `null` of anything else. */
export function pictureOf(bytes: Uint8Array): SkyPicture | null {
  const kind = SIGNATURES.find((signature) => signature.bytes.every((byte, index) => bytes[index] === byte));
  return kind === undefined ? null : { bytes, mediaType: kind.mediaType, credit: SKY_SURVEY.credit };
}

/** Opened pictures; `close` ends what is under way. */
export type OpenedPictures = SkyPictures & { close(): Promise<void> };

export type PictureSettings = {
  /** The one configured host; nothing else is ever asked, redirects are not followed. */
  readonly host: string;
  readonly userAgent: string;
  /** All in all, milliseconds. */
  readonly patienceMs?: number;
  /** Default: the system's. */
  readonly nowMs?: () => number;
};

/** Opens the service. After a failure it is left alone for some minutes, and every answer comes at once. */
export function openSkyPictures(settings: PictureSettings): OpenedPictures {
  const { host, userAgent, patienceMs = SKY_SURVEY.patienceMs, nowMs = Date.now } = settings;
  const agent = new Agent({ connect: { timeout: patienceMs }, connections: 2 });
  const closing = new AbortController();
  let silentUntilMs = Number.NEGATIVE_INFINITY;

  const fetched = async (question: SkyPictureQuestion): Promise<SkyPicture | null> => {
    const response = await fetch(pictureAddress(host, question), {
      dispatcher: agent,
      redirect: "manual",
      headers: { accept: "image/jpeg", "user-agent": userAgent },
      signal: AbortSignal.any([closing.signal, AbortSignal.timeout(patienceMs)]),
    });
    if (response.status !== 200 || response.body === null) {
      await response.body?.cancel();
      return null;
    }
    const bytes = await bounded(response.body, SKY_SURVEY.bytesAtMost);
    return bytes === null ? null : pictureOf(bytes);
  };

  return {
    async skyPicture(question) {
      if (nowMs() < silentUntilMs) return null;
      // Whatever fails, the chart is drawn from the catalogue alone.
      const picture = await fetched(question).catch(() => null);
      if (picture === null) silentUntilMs = nowMs() + SKY_SURVEY.pauseMs;
      return picture;
    },

    async close() {
      closing.abort();
      await agent.destroy();
    },
  };
}

/** A body of limited size; `null` when it is larger. */
async function bounded(body: AsyncIterable<Uint8Array>, bytesAtMost: number): Promise<Uint8Array | null> {
  const chunks: Uint8Array[] = [];
  let bytes = 0;
  for await (const chunk of body) {
    bytes += chunk.byteLength;
    if (bytes > bytesAtMost) return null;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}
