import { describe, expect, it, vi } from 'vitest';
import { Store } from '../../renderer/state/store.ts';
import { lessonPath, Unsaid } from '../../renderer/state/unsaid.ts';

describe('what is not said yet', () => {
  it('stands where it was written, also where a field was emptied, and nowhere else', () => {
    const unsaid = new Unsaid();
    unsaid.write('a/keep/name', 'Rowan');
    unsaid.write('a/keep/date', '');
    expect(unsaid.at('a/keep/name')).toBe('Rowan');
    expect(unsaid.at('a/keep/date')).toBe('');
    expect(unsaid.at('a/keep')).toBeNull();
    expect(unsaid.at('b/keep/name')).toBeNull();
  });

  it('is forgotten with everything below its path, and with nothing that only begins alike', () => {
    const unsaid = new Unsaid();
    for (const path of ['a/late', 'a/late/text', 'a/late-turn', 'ab/late']) unsaid.write(path, 'words');
    unsaid.forget('a/late');
    expect(unsaid.at('a/late')).toBeNull();
    expect(unsaid.at('a/late/text')).toBeNull();
    expect(unsaid.at('a/late-turn')).toBe('words');
    unsaid.forget('a');
    expect(unsaid.at('a/late-turn')).toBeNull();
    expect(unsaid.at('ab/late')).toBe('words');
  });

  it('tells who looks at it until they look no more', () => {
    const unsaid = new Unsaid();
    const listener = vi.fn<() => void>();
    const leave = unsaid.subscribe(listener);
    unsaid.write('a', 'words');
    unsaid.forget('a');
    expect(listener).toHaveBeenCalledTimes(2);
    leave();
    unsaid.write('a', 'words');
    expect(listener).toHaveBeenCalledTimes(2);
  });

  it('goes with the log that is closed, stays with the others, and does not draw the page anew', () => {
    const store = new Store();
    const drawn = vi.fn<() => void>();
    store.subscribe(drawn);
    store.unsaid.write('a/estimate/words', 'good');
    store.unsaid.write('b/estimate/words', 'bad');
    expect(drawn).not.toHaveBeenCalled();
    store.dispatch({ do: 'show', view: 'library' });
    expect(store.unsaid.at('a/estimate/words')).toBe('good');
    store.dispatch({ do: 'close', id: 'a' });
    expect(store.unsaid.at('a/estimate/words')).toBeNull();
    expect(store.unsaid.at('b/estimate/words')).toBe('bad');
  });

  it('goes with the student in whose lesson it was written', () => {
    const unsaid = new Unsaid();
    const theirs = `${lessonPath({ id: 'l', student_id: 's' })}/note`;
    const nobodys = `${lessonPath({ id: 'm', student_id: null })}/note`;
    unsaid.write(theirs, 'words');
    unsaid.write(nobodys, 'words');
    unsaid.forget('s');
    expect(unsaid.at(theirs)).toBeNull();
    expect(unsaid.at(nobodys)).toBe('words');
  });
});
