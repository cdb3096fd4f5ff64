/**
 * Refusals in the shape Discord gives them: a status, a code, a sentence, details.
 *
 * @packageDocumentation
 */

export class ApiError extends Error {
  readonly status: number;
  readonly code: number;
  readonly details: readonly string[];

  constructor(status: number, code: number, message: string, details: readonly string[] = []) {
    super(message);
    this.name = "ApiError";
    this.status = status;
    this.code = code;
    this.details = details;
  }

  /** The body as sent. */
  body(): object {
    if (this.details.length === 0) return { message: this.message, code: this.code };
    const errors = { _errors: this.details.map((message) => ({ code: "INVALID", message })) };
    return { message: this.message, code: this.code, errors };
  }
}

export const unknownChannel = () => new ApiError(404, 10_003, "Unknown Channel");
export const unknownMessage = () => new ApiError(404, 10_008, "Unknown Message");
export const unknownWebhook = () => new ApiError(404, 10_015, "Unknown Webhook");
export const unknownInteraction = () => new ApiError(404, 10_062, "Unknown interaction");
export const alreadyAcknowledged = () =>
  new ApiError(400, 40_060, "Interaction has already been acknowledged.");
export const missingAccess = () => new ApiError(403, 50_001, "Missing Access");
export const missingPermissions = () => new ApiError(403, 50_013, "Missing Permissions");
export const unauthorised = () => new ApiError(401, 0, "401: Unauthorized");
export const invalidForm = (details: readonly string[]) =>
  new ApiError(400, 50_035, "Invalid Form Body", details);
