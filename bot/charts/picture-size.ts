/**
 * How large a PNG or JPEG says it is, from its first bytes alone.
 *
 * @packageDocumentation
 */

export type PictureSize = { readonly width: number; readonly height: number };

const PNG_SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/**
 * Size in pixels, or `null` when the bytes are neither or break off.
 *
 * @remarks
 * Sources: W3C, *Portable Network Graphics*, the IHDR chunk; ITU-T T.81, annex B, the
 * frame header.
 */
export function pictureSize(bytes: Uint8Array): PictureSize | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const size = PNG_SIGNATURE.every((byte, i) => bytes[i] === byte) ? pngSize(view) : jpegSize(view);
  return size !== null && size.width > 0 && size.height > 0 ? size : null;
}

function pngSize(view: DataView): PictureSize | null {
  return view.byteLength < 24 ? null : { width: view.getUint32(16), height: view.getUint32(20) };
}

/** The first frame header's size: markers C0 to CF but for C4, C8 and CC. */
function jpegSize(view: DataView): PictureSize | null {
  if (view.byteLength < 4 || view.getUint16(0) !== 0xffd8) return null;
  let at = 2;
  while (at + 9 <= view.byteLength) {
    if (view.getUint8(at) !== 0xff) return null;
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (isFrame) return { width: view.getUint16(at + 7), height: view.getUint16(at + 5) };
    at += 2 + view.getUint16(at + 2);
  }
  return null;
}
