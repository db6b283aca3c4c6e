import { describe, expect, it } from 'vitest';
import { rosterOf } from '../../../electron/library/roster.ts';

const names = (text: string) => rosterOf(text).people.map(({ name }) => name);
const said = (text: string) => rosterOf(text).issues.map(({ message, firstLine }) => [firstLine, message]);

describe('a roster', () => {
  it.each([
    ['comma', 'name,role\nNils Brambling,student\nJuniper Crane,instructor\n'],
    [
      'semicolon, with a mark and the line ends of Windows',
      '\uFEFFName;Rolle\r\nNils Brambling;Schüler\r\nJuniper Crane;Fluglehrerin\r\n',
    ],
    ['tab, quoted', '"Role"\t"Full name"\n"student"\t"Brambling, Nils"\n"Instructor"\t"Crane, Juniper"\n'],
    ['bar, in parts', 'Family name|Given name|Role\nBrambling|Nils|\nCrane|Juniper|flight instructor\n'],
    ['old line ends', 'prénom,nom,fonction\rNils,Brambling,élève\rJuniper,Crane,instructeur\r'],
    [
      'a title, a remark and empty lines',
      'Flying school,\n# of this term\n\nname,role\n\nNils Brambling,\n,\nJuniper Crane,INSTRUCTOR\n',
    ],
  ])('is read by the words of its header: %s', (_, text) => {
    expect(rosterOf(text)).toEqual({
      people: [
        { role: 'student', name: 'Nils Brambling' },
        { role: 'instructor', name: 'Juniper Crane' },
      ],
      issues: [],
    });
  });

  it('of names alone is of students, with a comma in a name or not', () => {
    const text = 'Name\nNils Brambling\nFinch, Hugo\n"Wren, Hazel"\n';
    expect(rosterOf(text)).toEqual({
      people: ['Nils Brambling', 'Hugo Finch', 'Hazel Wren'].map((name) => ({ role: 'student', name })),
      issues: [],
    });
  });

  it('takes "name" for the last one beside a first name', () => {
    expect(names('Vorname;Name\nNils;Brambling\n')).toEqual(['Nils Brambling']);
  });

  it('leaves out a line with a sentence, and goes on', () => {
    const text = [
      'first name,last name,role',
      'Nils,Brambling,student',
      'Hugo,,student',
      ',,instructor',
      'Hazel,Wren,cook',
      'Ro"wan,Te"al,"student',
      'Juniper,Crane,instructor,,',
      'Juniper,Crane,instructor,on Mondays',
      'BRAMBLING,nils,',
      'Nils,Brambling,instructor',
    ].join('\n');
    expect(rosterOf(text).people).toEqual([
      { role: 'student', name: 'Nils Brambling' },
      { role: 'instructor', name: 'Juniper Crane' },
      { role: 'instructor', name: 'Nils Brambling' },
    ]);
    expect(said(text)).toEqual([
      [3, 'Left out: line 3 has no last name.'],
      [4, 'Left out: line 4 names nobody.'],
      [5, 'Left out: "cook" on line 5 is no role.'],
      [6, 'Left out: a quote on line 6 is never closed.'],
      [8, 'Left out: line 8 has 4 cells where the header has 3.'],
      [9, 'Left out: line 9 names BRAMBLING nils again, as line 2.'],
    ]);
  });

  it.each(['', 'Nils Brambling\nHugo Finch\n', 'first name,role\nNils,student\n', '{"name": "Nils"}'])(
    'is refused without a column for names: %j',
    (text) => {
      expect(rosterOf(text)).toMatchObject({
        people: [],
        issues: [{ severity: 'refusal', code: 'roster-no-names' }],
      });
    },
  );
});
