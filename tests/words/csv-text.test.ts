import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withoutUnseen } from '../../server/core/input/unseen.ts';
import { csvText } from '../../server/words/parts/csv-text.ts';

/** A reader of RFC 4180 of its own, to read back what was written. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const character = text[at];
    if (quoted) {
      if (character !== '"') cell += character;
      else if (text[at + 1] === '"') {
        cell += '"';
        at += 1;
      } else quoted = false;
    } else if (character === '"') quoted = true;
    else if (character === ',') {
      row.push(cell);
      cell = '';
    } else if (character === '\r' && text[at + 1] === '\n') {
      rows.push([...row, cell]);
      row = [];
      cell = '';
      at += 1;
    } else cell += character;
  }
  return rows;
}

describe('a table as CSV', () => {
  it('writes heads and rows with CRLF after a byte order mark', () => {
    expect(csvText(['from', 'length (km)'], [['Ketta', 384.25]])).toBe(
      '\ufefffrom,length (km)\r\nKetta,384.25\r\n',
    );
  });

  it('quotes commas, quotes and line breaks', () => {
    const csv = csvText(['name'], [['Tap, "old"\r\nby the road']]);
    expect(csv).toBe('\ufeffname\r\n"Tap, ""old""\r\nby the road"\r\n');
  });

  it('leaves what is not known empty and keeps zero', () => {
    expect(csvText(['a', 'b', 'c'], [[null, 0, Number.NaN]])).toBe('\ufeffa,b,c\r\n,0,\r\n');
  });

  it.each(['=HYPERLINK("http://x")', '+1', '-1+2', '@SUM(A1)', '\tx', '\rx'])(
    'lets no spreadsheet run the name %j',
    (name) => {
      const [, row] = readCsv(csvText(['name'], [[name]]).slice(1));
      expect(row?.[0]).toBe(`'${name}`);
    },
  );

  it('writes a negative figure as a figure', () => {
    expect(csvText(['margin (l)'], [[-9.442]])).toContain('\r\n-9.442\r\n');
  });

  it('is read back as it was written, whatever the names', () => {
    const name = fc
      .string({ unit: 'grapheme' })
      .filter((text) => !/^(?:\s*[=+\-@]|[\t\r])/.test(text) && withoutUnseen(text) === text);
    fc.assert(
      fc.property(fc.array(fc.array(name, { minLength: 2, maxLength: 2 })), (rows) => {
        expect(readCsv(csvText(['a', 'b'], rows).slice(1))).toEqual([['a', 'b'], ...rows]);
      }),
    );
  });
});

it('no cell holds a sign that a terminal takes as an order or that turns the direction of reading', () => {
  const csv = csvText(['name'], [['a\u001b[2Jb\u202ec\u2028\u0085'], ['\u200b=1+1']]).slice(1);
  expect(csv.replaceAll('\r\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
  expect(readCsv(csv)).toEqual([['name'], ['a [2Jb c  '], ["' =1+1"]]);
});
