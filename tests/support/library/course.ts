import { join } from 'node:path';
import type { PilotSkill } from '../flight/cockpit.ts';
import { fly } from '../flight/fly.ts';
import { CHASER, DRIFTER, STUDENT, TIDY } from '../flight/skills.ts';
import { PETRELHOLM } from '../samples/petrelholm.ts';
import { windFrom } from '../samples/weather.ts';
import { touchAndGoThenLanding } from '../scenarios/approaches.ts';
import { withSeed } from '../scenarios/scene.ts';
import { writeLesson } from './term.ts';

/** How a student flies at the beginning of the course, and at its end. */
interface Course {
  readonly from: PilotSkill;
  readonly to: PilotSkill;
}

/** Sees the glidepath late, does too much about it, and holds it too long. */
const CHASES: PilotSkill = {
  ...CHASER,
  lateS: 8,
  climbFpmPerScale: 3200,
  largestClimbFpm: 950,
  cutDegPerScale: 18,
  largestCutDeg: 20,
  speedUnrestKt: 1.5,
};
/** Lets the speed wander. */
const FAST: PilotSkill = { ...STUDENT, speedUnrestKt: 14 };
/** Lets the wind carry the aircraft off the localizer. */
const DRIFTS: PilotSkill = {
  ...STUDENT,
  lateS: 5,
  cutDegPerScale: 20,
  planned: 0.7,
  learnDegPerS: 0.01,
  ignoredFullScale: 0.6,
};

/** A course of invented students, of whom each has something of their own. */
const COURSE: Readonly<Record<string, Course>> = {
  'Rowan Teal': { from: CHASES, to: TIDY },
  'Hazel Wren': { from: DRIFTS, to: DRIFTS },
  'Juniper Crane': { from: FAST, to: FAST },
  'Willow Dunlin': { from: TIDY, to: TIDY },
  'Linden Siskin': { from: CHASER, to: STUDENT },
  'Aspen Plover': { from: STUDENT, to: TIDY },
  'Maple Godwit': { from: STUDENT, to: STUDENT },
  'Fern Ruff': { from: DRIFTER, to: STUDENT },
};

/** Writes a folder for each student, and in it a log of two approaches for each lesson. */
export function writeCourse(folder: string, students: readonly string[], lessons: number): void {
  for (const [i, student] of students.entries())
    for (let lesson = 0; lesson < lessons; lesson++) {
      const plan = touchAndGoThenLanding(PETRELHOLM, {
        skill: between(COURSE[student]!, lesson / (lessons - 1)),
        wind: windFrom(55 + 10 * (lesson % 4), 5 + 2 * (lesson % 3), 'smooth'),
      });
      const seed = `${student} ${lesson}`;
      writeLesson(join(folder, student), lesson, i % 5, fly(withSeed(plan, seed)), seed);
    }
}

function between({ from, to }: Course, share: number): PilotSkill {
  const part = (key: keyof PilotSkill) => from[key] + share * (to[key] - from[key]);
  return Object.fromEntries(Object.keys(from).map((key) => [key, part(key as keyof PilotSkill)])) as never;
}
