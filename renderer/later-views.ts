import { lazy } from 'react';

const flight = () => import('./views/flight-view.tsx');
const facilities = () => import('./views/facility/facilities-view.tsx');
const standards = () => import('./views/standards/standards-view.tsx');

/** Views that the first one does without: the page is there sooner, and they are fetched right behind it. */
export const FlightView = lazy(async () => ({ default: (await flight()).FlightView }));
export const FacilitiesView = lazy(async () => ({ default: (await facilities()).FacilitiesView }));
export const StandardsView = lazy(async () => ({ default: (await standards()).StandardsView }));

/** Fetches them before they are gone to. */
export function fetchLaterViews(): void {
  // One that cannot be fetched is asked for again, and told, when it is gone to.
  for (const fetchView of [flight, facilities, standards]) fetchView().catch(() => {});
}
