import type { Quantity } from './log.ts';
import type { NumberColumn } from './number-column.ts';
import type { DecimalMark } from './parse-number.ts';
import { QUANTITY_RULES } from './quantity-rules.ts';
import type { RowFaults } from './row-faults.ts';
import type { Row } from './row.ts';
import type { Unit } from './unit-words.ts';

/** What recorders write where they know nothing; unknown, and no fault. */
const ABSENT = /^(?:|nan|null|none|nil|n\/?a|-+|_+|\?+|inf|invalid|undefined|\*+|#n\/a)$/i;
const ON = /^(?:1|true|yes|on|down|dn|extended|locked|ausgefahren|unten|sorti|abajo)$/i;
const OFF = /^(?:0|false|no|off|up|retracted|eingefahren|oben|rentre|arriba)$/i;

/** Some recorders write this where they know no speed, whatever the unit: in km/h and m/s it would be possible. */
const SPEED_MARK = 999;

/** Reads one column: text to the quantity's own unit, NaN for whatever is no possible value, counting those. */
export class ValueReader {
  readonly index: number;
  readonly header: string;
  readonly #factor: number;
  readonly #shift: number;
  readonly #mark: DecimalMark;
  readonly #min: number;
  readonly #max: number;
  readonly #hasMark: boolean;
  readonly #into: NumberColumn;
  readonly #isSwitch: boolean;
  readonly #isConverted: boolean;
  #unreadable = 0;
  #unreadableLine = 0;
  #marked = 0;
  #markedLine = 0;

  constructor(
    place: { index: number; header: string },
    quantity: Quantity,
    unit: Unit,
    mark: DecimalMark,
    into: NumberColumn,
  ) {
    const rule = QUANTITY_RULES[quantity];
    this.index = place.index;
    this.header = place.header;
    // Needles stay as recorded until their largest value has told the scale: see needle-scale.ts.
    this.#factor = rule.dimension === 'needle' ? 1 : unit.factor / rule.base;
    this.#shift = unit.shift;
    this.#mark = mark;
    this.#min = rule.min;
    this.#max = rule.max;
    this.#hasMark = rule.dimension === 'speed' && rule.min === 0;
    this.#into = into;
    this.#isSwitch = quantity === 'gearDown';
    this.#isConverted = this.#factor !== 1 || this.#shift !== 0;
  }

  /** Takes the row's value for the column. */
  read(row: Row, line: number): void {
    const recorded = row.number(this.index, this.#mark);
    // Mostly the unit is the quantity's own, and most of the time of reading a value goes by in arithmetic.
    const value = this.#isConverted ? (recorded + this.#shift) * this.#factor : recorded;
    const isPossible = value >= this.#min && value <= this.#max;
    const isUsable = isPossible && !(this.#hasMark && recorded === SPEED_MARK);
    this.#into.push(isUsable ? value : this.#unusable(recorded, row, line));
  }

  #unusable(recorded: number, row: Row, line: number): number {
    if (Number.isNaN(recorded)) return this.#unusual(row.text(this.index), line);
    if (this.#marked++ === 0) this.#markedLine = line;
    return NaN;
  }

  #unusual(text: string, line: number): number {
    const word = text.replaceAll('\0', '').trim();
    if (ABSENT.test(word)) return NaN;
    if (this.#isSwitch && ON.test(word)) return 1;
    if (this.#isSwitch && OFF.test(word)) return 0;
    if (this.#unreadable++ === 0) this.#unreadableLine = line;
    return NaN;
  }

  /** Reports what was counted. */
  report(faults: RowFaults): void {
    if (this.#unreadable > 0)
      faults.add(`value-unreadable\t${this.header}`, this.#unreadableLine, this.#unreadable);
    if (this.#marked > 0) faults.add(`value-marked-invalid\t${this.header}`, this.#markedLine, this.#marked);
  }
}
