import type { englishEvidence } from './english-evidence.ts';

/** German words of what only some tests have. */
export const germanEvidence: typeof englishEvidence = {
  session: {
    provisional: 'Vorläufig: kein Urteil, bis dies geklärt ist.',
    samples: 'Stichproben der Prüfung',
    apart:
      'Jede Stichprobe ist für sich geschätzt; über Konstruktionen oder Prüfstände wird nichts vereinigt.',
    sample: 'Stichprobe',
    role: 'Rolle',
    roles: { candidate: 'Prüfling', reference: 'Vergleich' },
    failed: 'versagt',
    ofValid: (failed, valid) => `${failed} von ${valid}`,
    repeats: 'Wiederholt',
    masses: 'Fallmassen, die nicht die angegebenen waren',
    repeatsRun: (of) =>
      `Wiederholt die Prüfung ${of.run} (${of.path}) wegen ${of.reason}, genehmigt von ${of.approver}; beide bleiben erhalten.`,
    inPlaceOf: (of) =>
      `${of.specimen} wurde an Stelle von ${of.replaces} geprüft wegen ${of.reason}, genehmigt von ${of.approver}; beide bleiben erhalten.`,
    massCorrected: (of) =>
      `Fallmasse${of.rig === null ? '' : ` von ${of.rig}`} ${of.used} statt der angegebenen ${of.stated} bei ${of.drops}; die Energien richten sich nach ihr.`,
  },
  laws: {
    heading: 'Andere Verteilungen der Festigkeit',
    law: 'Verteilung',
    logLikelihood: 'Log-Likelihood',
    weight: 'Akaike-Gewicht',
    levels: (law) => `Stufe für Stufe, ${law}`,
    statistic: 'Prüfgröße',
    degrees: 'Freiheitsgrade',
    deviance: 'Devianz',
    pearson: 'Pearson-Summe',
  },
  regression: {
    heading: 'Einfluss der Bedingungen',
    notDone: (why) => `Nicht ausgeführt: ${why}`,
    effect: 'Einfluss auf die Festigkeit',
    test: 'Likelihood-Quotienten-Test',
    per: (unit, per) => `${unit}/${per}`,
  },
  budget: {
    heading: 'Unsicherheit des Prüfstands',
    ofDrops: 'der Schläge',
    ofRig: 'des Prüfstands',
    combined: 'zusammen',
    withRig: 'Bereich mit dem Prüfstand',
    standard:
      'Standardunsicherheiten: die der Schläge wird mit ihrer Zahl kleiner, die des Prüfstands ist allen gemein und wird es nicht.',
    of: 'von',
    source: 'Herkunft',
    scope: 'Reichweite',
    scopes: { common: 'gemeinsam', drop: 'je Schlag' },
    adds: 'Beitrag zur Energie',
    infinite: 'unendlich',
    inputs: {
      mass: 'Fallmasse',
      gravity: 'Fallbeschleunigung',
      height: 'Höhe',
      friction: 'Reibung',
      pressure: 'Druck',
      temperature: 'Temperatur',
    },
    oneDrop: (of) =>
      `Ein Schlag von ${of.energy} (${of.height}): gemeinsam ${of.common}, von Schlag zu Schlag ${of.drop}, was in der Streuung schon enthalten ist, zusammen ${of.whole} mit ${of.degrees} wirksamen Freiheitsgraden.`,
    drawn: (of) =>
      `${of.agrees ? 'Das Ziehen der Eingangsgrößen stimmt überein' : 'Das Ziehen der Eingangsgrößen stimmt NICHT überein'}: ${of.drawn} gegen ${of.propagated} durch Fortpflanzung (${of.trials} Ziehungen, Startwert ${of.seed}, Enden auf ${of.tolerance}).`,
  },
};
