/** What the people on board of a sample state, as options of the command; a log without airspeed has no target. */
const OPTIONS: Readonly<Record<string, string>> = {
  'first-approach.csv': '--target-airspeed 90 --runway seen --conditions simulated',
  'first-approach.gpx': '--runway seen --conditions simulated',
  'from-above.csv': '--target-airspeed 95 --runway seen',
  'unstable-and-continued.csv': '--target-airspeed 90 --runway seen --conditions vmc',
  'went-around.csv': '--target-airspeed 90 --conditions simulated',
  'touch-and-go-then-again.csv': '--runway seen',
  'ends-on-final.gpx': '--receiver augmented',
  'circled.gpx': '--runway seen --receiver augmented',
  'joined-inside-the-fix.csv': '--target-airspeed 90 --runway seen --vectored-inside-fix yes',
  'tidy-landing.csv': '--target-airspeed 85 --runway seen --conditions simulated',
  'every-five-seconds.csv': '--runway seen',
  'phone.gpx': '',
  'recorder-fault.csv': '--target-airspeed 90 --runway seen',
  'steep-and-high.csv': '--target-airspeed 90 --runway seen --standard skill-test',
  'overflight.csv': '',
  'missed-at-minimums.csv': '--target-airspeed 92 --runway not-seen --conditions imc --standard skill-test',
  'offset-course.csv': '--target-airspeed 90 --runway seen',
  'low-approach.csv': '--target-airspeed 90 --runway seen --standard airline-transport --receiver augmented',
};

/** The words of the command for a sample, after the names of its files. */
export function optionsOf(file: string): string[] {
  const options = OPTIONS[file];
  if (options === undefined) throw new Error(`nothing is stated of the sample ${file}, not even nothing`);
  return options.split(' ').filter((word) => word !== '');
}
