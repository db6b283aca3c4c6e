import { lazy } from 'react';

const flight = () => import('./views/flight-view.tsx');
const facilities = () => import('./views/facility/facilities-view.tsx');
const brief = () => import('./views/brief/brief-view.tsx');
const standards = () => import('./views/standards/standards-view.tsx');
const library = () => import('./views/library/library-view.tsx');
const lesson = () => import('./views/library/lesson-view.tsx');
const progress = () => import('./views/progress/progress-view.tsx');
const student = () => import('./views/progress/student-view.tsx');

/** Views that the first one does without: the page is there sooner, and they are fetched right behind it. */
export const FlightView = lazy(async () => ({ default: (await fetched(flight)).FlightView }));
export const FacilitiesView = lazy(async () => ({ default: (await fetched(facilities)).FacilitiesView }));
export const BriefView = lazy(async () => ({ default: (await fetched(brief)).BriefView }));
export const StandardsView = lazy(async () => ({ default: (await fetched(standards)).StandardsView }));

export const LibraryView = lazy(async () => ({ default: (await fetched(library)).LibraryView }));
export const LessonView = lazy(async () => ({ default: (await fetched(lesson)).LessonView }));
export const ProgressView = lazy(async () => ({ default: (await fetched(progress)).ProgressView }));
export const StudentView = lazy(async () => ({ default: (await fetched(student)).StudentView }));

/** A part of the page that its host does not give out, as when that was ended. */
export class NotFetched extends Error {}

/** Fetches them before they are gone to, so that they are there also once the host was ended. */
export function fetchLaterViews(): void {
  // One that cannot be fetched is asked for once more when it is gone to; where it fails again, that is told.
  for (const fetchPart of [flight, library, lesson, progress, student, facilities, brief, standards])
    fetchPart().catch(() => {});
}

async function fetched<T>(fetchPart: () => Promise<T>): Promise<T> {
  try {
    return await fetchPart();
  } catch (cause) {
    throw new NotFetched('a part of the page could not be fetched', { cause });
  }
}
