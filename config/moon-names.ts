/**
 * What people call features of the Moon besides their IAU names.
 *
 * @packageDocumentation
 */

/** The name in use, and the one the Gazetteer has. */
export const MOON_NAMES: Readonly<Record<string, string>> = {
  "Sea of Rains": "Mare Imbrium",
  "Sea of Showers": "Mare Imbrium",
  "Sea of Serenity": "Mare Serenitatis",
  "Sea of Tranquillity": "Mare Tranquillitatis",
  "Sea of Tranquility": "Mare Tranquillitatis",
  "Sea of Crises": "Mare Crisium",
  "Sea of Fertility": "Mare Fecunditatis",
  "Sea of Nectar": "Mare Nectaris",
  "Sea of Moisture": "Mare Humorum",
  "Sea of Clouds": "Mare Nubium",
  "Known Sea": "Mare Cognitum",
  "Sea of Vapours": "Mare Vaporum",
  "Sea of Islands": "Mare Insularum",
  "Sea of Cold": "Mare Frigoris",
  "Ocean of Storms": "Oceanus Procellarum",
  "Lake of Death": "Lacus Mortis",
  "Bay of Rainbows": "Sinus Iridum",
  "Central Bay": "Sinus Medii",
  Apennines: "Montes Apenninus",
  Alps: "Montes Alpes",
  Caucasus: "Montes Caucasus",
  "Straight Wall": "Rupes Recta",
  "Straight Range": "Montes Recti",
  "Altai Scarp": "Rupes Altai",
  "Alpine Valley": "Vallis Alpes",
  "Schröter's Valley": "Vallis Schröteri",
  "Rheita Valley": "Vallis Rheita",
  "Hadley Rille": "Rima Hadley",
  "Hyginus Rille": "Rima Hyginus",
  "Ariadaeus Rille": "Rima Ariadaeus",
  "Tranquility Base": "Statio Tranquillitatis",
  "Tranquillity Base": "Statio Tranquillitatis",
  Walter: "Walther",
};
