import { createServer, type RequestListener, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { afterEach, describe, expect, it } from "vitest";
import { openSkyPictures, pictureAddress, pictureOf } from "../../../bot/survey/hips2fits.ts";
import { SKY_SURVEY } from "../../../config/sky-survey.ts";
import { timerOf } from "../../timer.ts";

const QUESTION = { raDeg: 303.03, decDeg: 38.36, widthDeg: 2, heightDeg: 1, positionAngleDeg: 90 };
const JPEG = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3]);

const servers: Server[] = [];

async function standIn(listener: RequestListener): Promise<string> {
  const server = createServer(listener);
  servers.push(server);
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}

afterEach(async () => {
  for (const server of servers.splice(0)) {
    server.closeAllConnections();
    await new Promise((done) => server.close(done));
  }
});

describe("pictureAddress", () => {
  const cards = () => {
    const address = new URL(pictureAddress("https://sky.example", QUESTION));
    expect(address.host).toBe("sky.example");
    return JSON.parse(address.searchParams.get("wcs") ?? "{}") as Record<string, number>;
  };

  it("keeps the shape of the field and the centre in the middle of the picture", () => {
    const { NAXIS1 = 0, NAXIS2 = 0, CRPIX1, CRPIX2, CRVAL1, CRVAL2, CDELT2 = 0 } = cards();
    expect([NAXIS1, NAXIS2]).toEqual([SKY_SURVEY.pixels, SKY_SURVEY.pixels / 2]);
    expect([CRPIX1, CRPIX2]).toEqual([(NAXIS1 + 1) / 2, (NAXIS2 + 1) / 2]);
    expect([CRVAL1, CRVAL2]).toEqual([303.03, 38.36]);
    expect(CDELT2 * NAXIS1).toBeCloseTo(2, 9);
  });

  // By hand from the FITS paper's ξ = CDELT1·(PC1_1·x + PC1_2·y): a step up at position angle 90° goes east.
  it("turns the picture so that its up is the position angle", () => {
    const { CDELT1 = 0, CDELT2 = 0, PC1_1 = 0, PC1_2 = 0, PC2_1 = 0, PC2_2 = 0 } = cards();
    const step = (x: number, y: number) => [
      CDELT1 * (PC1_1 * x + PC1_2 * y),
      CDELT2 * (PC2_1 * x + PC2_2 * y),
    ];
    const [eastUp = 0, northUp = 0] = step(0, 1);
    expect(eastUp).toBeGreaterThan(0);
    expect(northUp).toBeCloseTo(0, 12);
    const [eastRight = 0, northRight = 0] = step(1, 0);
    expect(eastRight).toBeCloseTo(0, 12);
    expect(northRight).toBeGreaterThan(0);
  });
});

describe("pictureOf", () => {
  it("knows a picture by its first bytes and takes nothing else", () => {
    expect(pictureOf(JPEG)?.mediaType).toBe("image/jpeg");
    expect(pictureOf(new TextEncoder().encode("<html>busy</html>"))).toBeNull();
    expect(pictureOf(new Uint8Array())).toBeNull();
  });
});

describe("openSkyPictures, against a stand-in on loopback", () => {
  const opened = async (listener: RequestListener, patienceMs = 2000, nowMs?: () => number) =>
    openSkyPictures({
      host: await standIn(listener),
      userAgent: "test",
      patienceMs,
      ...(nowMs === undefined ? {} : { nowMs }),
    });

  it("brings a picture with its credit and says who asks", async () => {
    let asked = "";
    const pictures = await opened((request, response) => {
      asked = `${request.headers["user-agent"]} ${request.url?.split("?")[0]}`;
      response.end(JPEG);
    });
    const picture = await pictures.skyPicture(QUESTION);
    expect(picture?.bytes).toEqual(Buffer.from(JPEG));
    expect(picture?.credit).toContain("CDS");
    expect(asked).toBe(`test ${SKY_SURVEY.path}`);
    await pictures.close();
  });

  it.each<[string, RequestListener]>([
    ["a refusal", (_, response) => response.writeHead(503).end("{}")],
    [
      "a redirect to another host",
      (_, response) => response.writeHead(302, { location: "http://elsewhere.example/" }).end(),
    ],
    ["a page in place of a picture", (_, response) => response.end("<html></html>")],
    [
      "a body without end",
      (_, response) => {
        response.write(JPEG);
        const chunk = Buffer.alloc(1_000_000);
        const more = () => {
          while (!response.destroyed && response.write(chunk)) {}
        };
        response.on("drain", more);
        more();
      },
    ],
    ["a connection cut off", (request) => request.socket.destroy()],
  ])("gives none for %s", async (_, listener) => {
    const pictures = await opened(listener);
    expect(await pictures.skyPicture(QUESTION)).toBeNull();
    await pictures.close();
  });

  it("waits no longer than it may, then leaves the service alone for a while", async () => {
    let requests = 0;
    let now = 0;
    const pictures = await opened(
      () => {
        requests++;
      },
      100,
      () => now,
    );
    const late = timerOf(1500);
    expect(await pictures.skyPicture(QUESTION)).toBeNull();
    expect(late()).toBe(false);
    expect(await pictures.skyPicture(QUESTION)).toBeNull();
    expect(requests).toBe(1);
    now = SKY_SURVEY.pauseMs;
    expect(await pictures.skyPicture(QUESTION)).toBeNull();
    expect(requests).toBe(2);
    await pictures.close();
  });
});
