/**
 * The 88 constellations: Latin name, genitive, abbreviation.
 *
 * Source: International Astronomical Union, "The Constellations" (from memory).
 *
 * @packageDocumentation
 */

export type Constellation = {
  readonly name: string;
  /** As it follows a star's letter: alpha `Cygni`. */
  readonly genitive: string;
  readonly abbreviation: string;
};

const ROWS = `
Andromeda/Andromedae/And Antlia/Antliae/Ant Apus/Apodis/Aps Aquarius/Aquarii/Aqr Aquila/Aquilae/Aql
Ara/Arae/Ara Aries/Arietis/Ari Auriga/Aurigae/Aur Boötes/Boötis/Boo Caelum/Caeli/Cae
Camelopardalis/Camelopardalis/Cam Cancer/Cancri/Cnc Canes_Venatici/Canum_Venaticorum/CVn
Canis_Major/Canis_Majoris/CMa Canis_Minor/Canis_Minoris/CMi Capricornus/Capricorni/Cap Carina/Carinae/Car
Cassiopeia/Cassiopeiae/Cas Centaurus/Centauri/Cen Cepheus/Cephei/Cep Cetus/Ceti/Cet
Chamaeleon/Chamaeleontis/Cha Circinus/Circini/Cir Columba/Columbae/Col Coma_Berenices/Comae_Berenices/Com
Corona_Australis/Coronae_Australis/CrA Corona_Borealis/Coronae_Borealis/CrB Corvus/Corvi/Crv
Crater/Crateris/Crt Crux/Crucis/Cru Cygnus/Cygni/Cyg Delphinus/Delphini/Del Dorado/Doradus/Dor
Draco/Draconis/Dra Equuleus/Equulei/Equ Eridanus/Eridani/Eri Fornax/Fornacis/For Gemini/Geminorum/Gem
Grus/Gruis/Gru Hercules/Herculis/Her Horologium/Horologii/Hor Hydra/Hydrae/Hya Hydrus/Hydri/Hyi
Indus/Indi/Ind Lacerta/Lacertae/Lac Leo/Leonis/Leo Leo_Minor/Leonis_Minoris/LMi Lepus/Leporis/Lep
Libra/Librae/Lib Lupus/Lupi/Lup Lynx/Lyncis/Lyn Lyra/Lyrae/Lyr Mensa/Mensae/Men
Microscopium/Microscopii/Mic Monoceros/Monocerotis/Mon Musca/Muscae/Mus Norma/Normae/Nor
Octans/Octantis/Oct Ophiuchus/Ophiuchi/Oph Orion/Orionis/Ori Pavo/Pavonis/Pav Pegasus/Pegasi/Peg
Perseus/Persei/Per Phoenix/Phoenicis/Phe Pictor/Pictoris/Pic Pisces/Piscium/Psc
Piscis_Austrinus/Piscis_Austrini/PsA Puppis/Puppis/Pup Pyxis/Pyxidis/Pyx Reticulum/Reticuli/Ret
Sagitta/Sagittae/Sge Sagittarius/Sagittarii/Sgr Scorpius/Scorpii/Sco Sculptor/Sculptoris/Scl
Scutum/Scuti/Sct Serpens/Serpentis/Ser Sextans/Sextantis/Sex Taurus/Tauri/Tau Telescopium/Telescopii/Tel
Triangulum/Trianguli/Tri Triangulum_Australe/Trianguli_Australis/TrA Tucana/Tucanae/Tuc
Ursa_Major/Ursae_Majoris/UMa Ursa_Minor/Ursae_Minoris/UMi Vela/Velorum/Vel Virgo/Virginis/Vir
Volans/Volantis/Vol Vulpecula/Vulpeculae/Vul`;

export const CONSTELLATIONS: readonly Constellation[] = ROWS.trim()
  .split(/\s+/)
  .map((row) => {
    const [name = "", genitive = "", abbreviation = ""] = row.replaceAll("_", " ").split("/");
    return { name, genitive, abbreviation };
  });
