import type { Random } from '../../../support/flight/random.ts';
import type { MadeUpApproach } from './made-up-school.ts';

/** RMS of the glidepath in full scales: how students, their days and the approaches of a day differ. */
const SPREAD = { students: 0.08, days: 0.04, approaches: 0.06 };
/** What makes an approach worse or better than it would have been. */
const TURBULENCE = 0.1;
const COUPLED = -0.1;
const PER_LESSON = -0.015;

/** One student: who flies with them, and how. */
export interface StudentOfChance {
  readonly instructor: string;
  readonly lessons: number;
  readonly approaches: number;
  /** How likely a lesson is flown in turbulence, and an approach coupled. */
  readonly turbulence: number;
  readonly coupled: number;
  /** What the instructor is worth, on top of all. */
  readonly effect: number;
}

export const PLAIN: StudentOfChance = {
  instructor: 'ida',
  lessons: 5,
  approaches: 4,
  turbulence: 0.3,
  coupled: 0.3,
  effect: 0,
};

/** The approaches of students whose figures come of chance, of the mix, of experience and of their instructor. */
export function approachesOfChance(chance: Random, students: readonly StudentOfChance[]): MadeUpApproach[] {
  return students.flatMap((student, i) => {
    const own = 0.5 + student.effect + chance.gaussian() * SPREAD.students;
    return Array.from({ length: student.lessons }, (_, lesson) => {
      const isRough = chance.uniform() < student.turbulence;
      const day = own + chance.gaussian() * SPREAD.days + (isRough ? TURBULENCE : 0) + PER_LESSON * lesson;
      return Array.from({ length: student.approaches }, (_, k): MadeUpApproach => {
        const isCoupled = chance.uniform() < student.coupled;
        return {
          student: `student ${i}`,
          instructor: student.instructor,
          lesson: lesson + 1,
          minute: k * 10,
          turbulence: isRough ? 'moderate' : 'none',
          flown: isCoupled ? 'coupled' : 'hand-flown',
          value: day + (isCoupled ? COUPLED : 0) + chance.gaussian() * SPREAD.approaches,
        };
      });
    }).flat();
  });
}

/** So many of one kind. */
export function several<T>(count: number, what: (i: number) => T): T[] {
  return Array.from({ length: count }, (_, i) => what(i));
}
