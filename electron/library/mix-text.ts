import type { ApproachFacts } from '../../core/progress/approach-facts.ts';

/** What is stated and known of an approach and makes it easy or hard. */
type Mix = Pick<ApproachFacts, 'flown' | 'conditions' | 'turbulence' | 'localizerFullScaleDeg' | 'logKind'>;

/** All of it as one text: thousands of approaches have few different ones. */
export function mixText({ flown, conditions, turbulence, localizerFullScaleDeg, logKind }: Mix): string {
  return JSON.stringify([flown, conditions, turbulence, localizerFullScaleDeg, logKind]);
}

export function mixOf(text: string): Mix {
  const [flown, conditions, turbulence, localizerFullScaleDeg, logKind] = JSON.parse(text) as [
    Mix['flown'],
    Mix['conditions'],
    Mix['turbulence'],
    number,
    string,
  ];
  return { flown, conditions, turbulence, localizerFullScaleDeg, logKind };
}
