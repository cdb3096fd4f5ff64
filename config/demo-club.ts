/**
 * The demo club: invented, with every name in it.
 *
 * It is set up by the same questions a member would ask, in order; a test asks them.
 *
 * @packageDocumentation
 */

/** One question of a member's. */
export type DemoQuestion = {
  readonly command: string;
  readonly subcommand: string;
  readonly options: Readonly<Record<string, string | number | boolean>>;
};

export type DemoMember = {
  readonly id: string;
  readonly organiser: boolean;
  readonly questions: readonly DemoQuestion[];
};

export type DemoClub = {
  readonly id: string;
  readonly name: string;
  readonly members: readonly DemoMember[];
};

function filter(name: string, bands: string, sub: number): DemoQuestion {
  return { command: "rig", subcommand: "filter", options: { rig: "Eight-inch", name, bands, sub } };
}

export const DEMO_CLUB: DemoClub = {
  id: "fell-end",
  name: "Fell End Astronomy Circle",
  members: [
    {
      id: "me",
      organiser: true,
      questions: [
        {
          command: "site",
          subcommand: "add",
          options: {
            name: "Fell End",
            latitude: 54.5,
            longitude: -2.6,
            elevation: 310,
            sky: "21.2",
            seeing: 2.8,
          },
        },
        {
          command: "site",
          subcommand: "horizon",
          options: {
            site: "Fell End",
            profile: "0:3, 60:4, 100:7, 130:12, 155:17, 180:18, 205:15, 230:9, 270:5, 320:3",
          },
        },
        { command: "site", subcommand: "share", options: { site: "Fell End" } },
        {
          command: "rig",
          subcommand: "add",
          options: {
            name: "Eight-inch",
            "focal-length": 800,
            "f-ratio": 4,
            optics: "mirror",
            obstruction: 0.35,
            sensor: "IMX571",
            mono: true,
            "sensor-temp": -10,
            gain: "gain 100",
            mount: "german",
            guided: true,
          },
        },
        filter("Hα", "656.3/7", 300),
        filter("[O III]", "500.7/7", 300),
        filter("[S II]", "672.4/7", 300),
        filter("luminance", "550/300", 120),
      ],
    },
    {
      id: "wren",
      organiser: false,
      questions: [
        {
          command: "rig",
          subcommand: "add",
          options: {
            name: "Travel lens",
            "focal-length": 135,
            "f-ratio": 2.8,
            optics: "refractor",
            sensor: "APS-C",
            mono: false,
            modified: false,
            gain: "ISO 800",
            mount: "tracker",
            guided: false,
          },
        },
      ],
    },
    {
      id: "hollis",
      organiser: false,
      questions: [
        {
          command: "rig",
          subcommand: "add",
          options: {
            name: "Ten-inch",
            aperture: 250,
            "f-ratio": 4.8,
            mount: "altazimuth",
            eyepieces: "30/68, 17/72, 9/82",
          },
        },
      ],
    },
  ],
};
