/**
 * Cloud in eighths of the sky.
 *
 * @packageDocumentation
 */

/**
 * Cloud amount in oktas.
 *
 * @param percent - total cloud, in [0, 100]
 * @returns 0 only for none at all, 8 only for no gap at all, else the nearest of 1–7
 *
 * @remarks Source: WMO-No. 8, cloud amount (a trace is 1 okta, a sky with any gap 7).
 */
export function oktas(percent: number): number {
  if (percent <= 0) return 0;
  if (percent >= 100) return 8;
  return Math.min(7, Math.max(1, Math.round(percent / 12.5)));
}
