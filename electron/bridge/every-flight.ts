import type { FlightFilter } from './library-calls.ts';

/** The filter that lets every approach through. Apart from the contract, so that the page need not carry its checks. */
export const EVERY_FLIGHT: FlightFilter = {
  student: null,
  lessonId: null,
  facility: null,
  fromDate: null,
  toDate: null,
  levelAtMost: null,
  words: null,
};
