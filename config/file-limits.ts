/**
 * How much of a file a member may send.
 *
 * @packageDocumentation
 */

/** Larger files are refused by every door. */
export const FILE_BYTES_AT_MOST = 10_485_760;

/**
 * Of a FITS file its head alone is read, whatever the picture behind it weighs:
 * 36 blocks of 2880 bytes.
 */
export const FITS_HEAD_BYTES = 36 * 2880;

/** A FITS file above this is refused all the same. */
export const FITS_BYTES_AT_MOST = 41_943_040;
