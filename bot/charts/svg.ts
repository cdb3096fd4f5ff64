/**
 * SVG by construction: elements are made of elements, and plain strings enter only
 * through {@link words}, escaped. A number that is not finite is a bug and throws.
 *
 * @packageDocumentation
 */

/** Markup that is safe to put inside other markup. */
export type Svg = { readonly markup: string };

/** A place on the page, pixels right and down. */
export type Point = { readonly x: number; readonly y: number };

export type Attributes = Readonly<Record<string, string | number | undefined>>;

const NOT_XML = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;

function escaped(text: string): string {
  return text
    .replace(NOT_XML, "")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replaceAll("'", "&#39;");
}

/**
 * A number as SVG text, to a hundredth of a pixel.
 *
 * @throws RangeError when it is not finite
 */
export function num(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError("a chart was given a number that is not finite");
  return String(Math.round(value * 100) / 100 || 0);
}

/** Text as a child of an element. */
export function words(text: string): Svg {
  return { markup: escaped(text) };
}

/** Several pieces as one. */
export function join(parts: readonly Svg[]): Svg {
  return { markup: parts.map((part) => part.markup).join("") };
}

export const NOTHING: Svg = { markup: "" };

/** An element; attributes that are `undefined` are left out. */
export function element(name: string, attributes: Attributes, children: readonly Svg[] = []): Svg {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === "number" ? num(value) : escaped(String(value))}"`)
    .join("");
  const inside = join(children).markup;
  return { markup: inside === "" ? `<${name}${written}/>` : `<${name}${written}>${inside}</${name}>` };
}

export function group(attributes: Attributes, children: readonly Svg[]): Svg {
  return element("g", attributes, children);
}

export function line(from: Point, to: Point, attributes: Attributes): Svg {
  return element("line", { x1: from.x, y1: from.y, x2: to.x, y2: to.y, ...attributes });
}

export function circle(centre: Point, radius: number, attributes: Attributes): Svg {
  return element("circle", { cx: centre.x, cy: centre.y, r: radius, ...attributes });
}

export function rect(x: number, y: number, width: number, height: number, attributes: Attributes): Svg {
  return element("rect", { x, y, width: Math.max(0, width), height: Math.max(0, height), ...attributes });
}

/** A path's data through points; empty of fewer than two. */
export function through(points: readonly Point[], closed = false): string {
  if (points.length < 2) return "";
  const steps = points.map((point, i) => `${i === 0 ? "M" : "L"}${num(point.x)} ${num(point.y)}`);
  return steps.join("") + (closed ? "Z" : "");
}

/** A path by its data; nothing when the data is empty. */
export function path(data: string, attributes: Attributes): Svg {
  return data === "" ? NOTHING : element("path", { d: data, fill: "none", ...attributes });
}
