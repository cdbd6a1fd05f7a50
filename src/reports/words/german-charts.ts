import type { Words } from './english.ts';

export const germanCharts: Words['charts'] = {
  height: 'Höhe über der Berührung (mm)',
  fallingMass: 'fallende Masse (kg)',
  energy: 'Energie (J)',
  medianEnergy: 'mittlere Versagensenergie (J)',
  dropInOrder: 'Schlag, der Reihe nach',
  failed: 'versagt',
  survived: 'überstanden',
  leftOut: 'ausgelassen',
  reversal: 'Umkehr',
  limit: 'Grenze',
  median: 'Median',
  reference: 'Referenz',
  shareFailed: 'Anteil versagt (%)',
  shareFailedOnLawScale: 'Anteil versagt (%), Weibull-Teilung',
  shareOfLimit: 'Anteil der Grenze (%)',
  tyreMass: 'Masse des Reifens (g)',
  distance: 'Strecke (km)',
  medianLife: 'Strecke, die die Hälfte hält (km)',
  hours: 'Zeit (h)',
  treadDepth: 'Tiefe des Profils (mm)',
  trueMedian: 'wahre mittlere Versagensenergie (J)',
  chanceOfVerdict: 'Wahrscheinlichkeit des Urteils (%)',
  outside: 'außerhalb',
  pause: 'Stillstand',
  night: 'Nacht, 22–6 Uhr',
  setValue: 'Sollwert',
  crossing: 'Grenze erreicht',
  bound: (confidence) => `einseitige ${confidence}-Schranke`,
  band: (level) => `${level}-Band`,
  group: (letter) => `Gruppe ${letter}`,
  more: (count) => `und ${count} weitere, nicht gezeichnet`,
  titles: {
    drops: 'Schläge, Stufe für Stufe',
    response: 'Anteil versagt über der Energie',
    tyres: 'Festigkeit jedes Reifens',
    criteria: 'Abstand zu den Grenzen',
    comparison: 'Konstruktionen im Vergleich',
    massEnergy: 'Energie und Masse',
    massLife: 'Lebensdauer und Masse',
    timeline: (channel) => `Auf der Trommel: ${channel}`,
    lives: 'Strecke jedes Reifens',
    weibull: 'Weibull-Netz der Strecken',
    wear: 'Abrieb des Profils',
    characteristic: 'Wahrscheinlichkeit jedes Urteils über der wahren Festigkeit',
  },
  tell: {
    drops: (of) =>
      `${of.drops} zwischen ${of.lowest} und ${of.highest} ${of.unit}: ${of.failed} versagt, ${of.survived} überstanden${of.leftOut > 0 ? `, ${of.leftOut} ausgelassen` : ''}${of.reversals === null ? '' : `; Umkehrungen: ${of.reversals}`}.${of.shown < of.all ? ` Gezeichnet sind die ersten ${of.shown}.` : ''}`,
    response: (of) =>
      `Der Anteil der Reifen, die versagen, steigt mit der Energie; ${of.median === null ? 'diese Ergebnisse geben keine einzelne beste Kurve' : `die Hälfte versagt bei ${of.median}`}${of.range === null ? '' : ` (Bereich ${of.range})`}. Das Band ist der punktweise ${of.band}-Bereich, die Striche an den Rändern sind ${of.drops}: oben versagt, unten überstanden.`,
    limit: (of) =>
      ` Die Grenze ist ${of.limit}${of.bound === null ? '' : `, die entscheidende Schranke ${of.bound}`}.`,
    tyres: (of) =>
      `${of.closed} Reifen mit Festigkeit zwischen zwei Höhen, ${of.open} mit einseitig offener Festigkeit, als Pfeile gezeichnet; alle zwischen ${of.lowest} und ${of.highest} J.${of.shown < of.all ? ` Gezeichnet sind die ersten ${of.shown}.` : ''}`,
    criterion: (of) => `${of.id}: ${of.share} der Grenze (${of.asked}); ${of.verdict}.`,
    construction: (of) =>
      `${of.name}: ${of.value}${of.range === null ? '' : ` (${of.range})`}${of.group === null ? '' : `, Gruppe ${of.group}`}.`,
    groups: 'Konstruktionen mit gleichem Buchstaben sind nicht zu unterscheiden.',
    massEnergy: (of) =>
      `${of.points} ${of.points === 1 ? 'Punkt' : 'Punkte'}: Masse ${of.lightest} bis ${of.heaviest} g, ${of.unit === 'J' ? 'Energie' : 'Lebensdauer'} ${of.lowest} bis ${of.highest} ${of.unit}.`,
    timeline: (of) =>
      `${of.channel} über ${of.hours} h, zwischen ${of.least} und ${of.most}; Minuten außerhalb des Bandes: ${of.outside}; Stillstände: ${of.pauses}. Jede Spalte zeigt die Extreme ihrer Zeit.`,
    lives: (of) =>
      `Versagt: ${of.failed}; unversehrt abgenommen oder noch im Lauf, als Pfeile gezeichnet: ${of.running}; ${of.shortest === of.longest ? `bei ${of.longest}` : `zwischen ${of.shortest} und ${of.longest}`} km.`,
    weibull: (of) =>
      `${of.failed} Ausfälle über ihren Rangplätzen, ${of.running} ohne Ausfall als Striche darunter.${of.life === null ? '' : ` Die Gerade hat die Form ${of.shape} und die charakteristische Lebensdauer ${of.life} km.`}`,
    wear: (of) =>
      `${of.readings} Messungen des Profils${of.limit === null ? '' : `, Grenze ${of.limit} mm`}${of.crossing === null ? '' : `; die Grenze wird bei ${of.crossing} km erreicht`}.`,
    characteristic: (of) =>
      `Wahrscheinlichkeiten von bestanden, nicht bestanden und keine Entscheidung bei ${of.points} wahren Medianen von ${of.lowest} bis ${of.highest} J${of.even === null ? '' : `; halb und halb besteht eine Konstruktion mit ${of.even} J`}.`,
  },
};
