import type { englishStudies } from './english-studies.ts';

/** German words of comparisons and of simulated tests. */
export const germanStudies: typeof englishStudies = {
  comparison: {
    heading: 'Konstruktionen im Vergleich',
    factors: 'Ist nur die erklärte Größe eine andere?',
    energies: { impact: 'Energien, zweite zu erster', endurance: 'Lebensdauern, zweite zu erster' },
    influence: 'Ohne einen Reifen',
    factor: 'Faktor',
    state: 'Stand',
    pair: 'Paar',
    point: 'Punkt',
    ratio: 'Verhältnis',
    difference: (unit) => `Unterschied (${unit})`,
    basis: {
      calibrated: 'kalibriert',
      'profile-likelihood': 'Profil-Likelihood',
      'specimen-effect': 'einzelne Schläge auf frische Reifen',
    },
    spreads: { common: 'gemeinsame Streuung', separate: 'eigene Streuungen' },
    states: {
      equal: 'gleich',
      declared: 'erklärt',
      consequence: 'Folge, wie angegeben',
      differs: 'verschieden',
      unknown: 'nicht als gleich gezeigt',
    },
    median: 'Median',
    percentPoint: (share) => `${share}-Punkt`,
    notRecorded: 'nicht aufgezeichnet',
    despite: (reason) => `hingenommen: ${reason}`,
    alsoEqual: (names) => `Gleich: ${names}.`,
    ofReference: (kind, name) =>
      `${kind === 'impact' ? 'mittlere Versagensenergie' : 'mittlere Lebensdauer'}, Anteil von ${name} (%)`,
    less: (share) => `${share} weniger`,
    more: (share) => `${share} mehr`,
    atMost: (change) => `nach unten offen, höchstens ${change}`,
    atLeast: (change) => `ab ${change}, nach oben offen`,
    each: (count) => `je ${count} Reifen`,
    counts: (first, second) => `${first} und ${second} Reifen`,
    survives: (of) =>
      `${of.what} ${of.kind === 'impact' ? `übersteht ${of.change} Energie` : `hält ${of.change} Strecke`} als ${of.against}: der ${of.level}-Bereich ist ${of.range}, ${of.tyres}.`,
    same: (of) =>
      `${of.what} ${of.kind === 'impact' ? 'übersteht die gleiche Energie' : 'hält die gleiche Strecke'} wie ${of.against}: der ${of.level}-Bereich ist ${of.range}, ${of.tyres}.`,
    noRatio: (of) =>
      `Wie ${of.what} zu ${of.against} steht, lässt sich nicht in einer Zahl sagen, ${of.tyres}.`,
    toldApart: 'Diese Zahlen unterscheiden die beiden.',
    notToldApart: 'Diese Zahlen unterscheiden die beiden nicht.',
    holm: 'Alle Paare sind zusammen beurteilt, nach Holm.',
    smallest: (share) => `Einen Unterschied von ${share} hätten sie in vier von fünf Fällen gezeigt.`,
    refused: 'Diese Prüfungen werden nicht verglichen: nicht nur das Erklärte ist verschieden.',
    notComparable:
      'Die Prüfungen stehen nebeneinander und wurden nicht verglichen: dazu braucht es Prüfungen einer Art, mit genannten Konstruktionen.',
    aliasing: 'Was mit der Konstruktion zusammengehen kann',
    aliasingStates: {
      constant: 'für alle gleich',
      crossed: 'gemischt',
      partly: 'teils zusammen',
      aliased: 'ZUSAMMEN: nicht zu trennen',
      unknown: 'unbekannt',
    },
    margin: 'Gegen eine Spanne',
    marginHolds: (of) =>
      `${of.what} verliert höchstens ${of.margin} gegen ${of.against}: das Verhältnis ist mindestens ${of.bound}.`,
    marginBroken: (of) =>
      `${of.what} verliert mehr als ${of.margin} gegen ${of.against}: das Verhältnis ist höchstens ${of.bound}.`,
    marginOpen: (of) =>
      `Ob ${of.what} mehr als ${of.margin} gegen ${of.against} verliert, ist nicht entschieden.`,
    relative: 'Gegen den Vergleichsreifen desselben Tages',
    eachByReference: (pair) => `${pair}, jede durch ihren Vergleich`,
    adjusted: (names) => `Unter Beachtung von ${names}`,
    allEqual: (of) => `Alle gleich: Likelihood-Quotient ${of.statistic} auf ${of.degrees}, p = ${of.p}.`,
    logRank: 'Log-Rang-Test, ohne angenommene Verteilung',
    tradeOff: {
      impact: 'Energie gegen die Masse des Reifens',
      endurance: 'Lebensdauer gegen die Masse des Reifens',
    },
    dominated: (of) => `übertroffen von ${of.names}${of.isToldApart ? '' : ', doch nicht unterschieden'}`,
    frontier: 'keine ist leichter und besser',
    verdictInfluence: 'Urteile, die ohne einen Reifen kippen',
    turns: (of) =>
      `${of.specimen} (${of.sample}): ${of.criterion} kippt ohne ihn von ${of.whole} zu ${of.without}.`,
    unread: 'Nicht gelesen',
    morePairs: (pairs) => `${pairs} weitere Paare im vollen Bericht`,
  },
  simulation: {
    title: 'Simulierte Prüfungen',
    finding: (of) =>
      of.median === null
        ? `${of.tests} Prüfungen nach ${of.protocol} wurden bei jedem von ${of.points} wahren Medianen simuliert.`
        : `${of.tests} Prüfungen nach ${of.protocol} wurden bei einem wahren Median von ${of.median} simuliert.`,
    even: (of) =>
      `Bei einem wahren Median von ${of.median} besteht eine Konstruktion in der Hälfte der Prüfungen (${of.specification}).`,
    judgedBy: (specification) => `Beurteilt nach ${specification}.`,
    assumed: 'Angenommen',
    law: 'Verteilung der Festigkeit',
    spread: 'Streuung',
    ofLogarithm: 'von ln E',
    between: 'Anteil der Varianz zwischen Reifen',
    damage: 'Festigkeit, die jeder überstandene Schlag nimmt',
    offset: 'Median in jeder Prüfung um bis zu eine halbe Stufe verschoben',
    energy: 'Energie',
    fitted: 'angepasste Verteilung',
    seed: 'Startwert der Zufallszahlen',
    tests: 'Prüfungen je Median',
    median: 'wahrer Median',
    bias: 'Verzerrung',
    deviation: 'Std.-Abw.',
    holds: 'Bereich trifft',
    drops: 'Schläge',
    tyres: 'Reifen',
    table: 'Über dem wahren Median',
    errors: 'Fehler der Schätzwerte',
    estimate: 'Schätzwert',
    truth: 'wahr',
    intervals: 'Bereiche: wie oft sie den wahren Wert treffen',
    promised: 'versprochen',
    held: 'gehalten',
    sides: (sides) => (sides === 2 ? 'zweiseitig' : 'untere Schranke'),
    monteCarlo:
      'Hinter ± steht ein Standardfehler der Simulation; mehr Prüfungen machen ihn kleiner, die Prüfung nicht besser.',
    invented:
      'Die Reifen sind erfunden: eine wirkliche Konstruktion kann einer anderen Verteilung folgen, und ihre Streuung ist vorher nicht bekannt.',
  },
};
