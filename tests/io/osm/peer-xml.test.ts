import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readExtract } from '../../../server/io/osm/read-extract.ts';
import { describeReal, realFolderThere, realPath } from '../../helpers/real.ts';

/** osmcode/osm-testdata, xml: files with the verdict "valid" or "invalid" beside each. */
const FOLDER = realPath('peers/osm-testdata/xml/data/');
const cases = realFolderThere ? readdirSync(FOLDER) : [];

/**
 * What becomes of each: the objects read as nodes/ways/relations, or the refusal's code. `why` explains where that
 * differs from the peer's verdict.
 */
const OUTCOMES: Readonly<Record<string, { outcome: string; why?: string }>> = {
  '100-correct_but_no_data': { outcome: '0/0/0' },
  '101-missing_version': { outcome: '0/0/0', why: 'read as 0.6 with the caution osm-version-missing' },
  '102-wrong_version': { outcome: 'osm-broken' },
  '103-old_version': { outcome: 'osm-broken', why: 'the peer gives no verdict' },
  '104-empty_file': { outcome: 'empty-file' },
  '105-incomplete_xml_file': { outcome: 'xml-broken' },
  '106-invalid_xml_file': { outcome: '0/0/0', why: 'well-formed; unknown elements are passed over' },
  '107-wrongly_nested_xml_file': { outcome: 'xml-broken' },
  '108-unknown_top_level': { outcome: 'unknown-format' },
  '109-unknown_data_level': { outcome: '1/0/0', why: 'unknown elements are passed over' },
  '110-entity_declaration': { outcome: 'xml-entity' },
  '120-correct_gzip_file_without_data': { outcome: '0/0/0' },
  '121-truncated_gzip_file': { outcome: 'gzip-broken' },
  '122-no_osm_element': { outcome: 'unknown-format' },
  '123-unknown_element_in_node': { outcome: '1/0/0', why: 'unknown elements are passed over' },
  '124-unknown_element_in_way': { outcome: '0/1/0', why: 'unknown elements are passed over' },
  '125-unknown_element_in_relation': { outcome: '0/0/1', why: 'unknown elements are passed over' },
  '126-wrong_member_type': { outcome: 'osm-broken' },
  '127-missing_member_type': { outcome: 'osm-broken' },
  '128-missing_member_ref': { outcome: 'osm-broken' },
  '140-unicode': { outcome: '5/0/0' },
  '141-entities': { outcome: '1/0/0' },
  '142-whitespace': { outcome: '5/0/1' },
  '200-nodes': { outcome: '3/0/0' },
  '300-change-file': { outcome: 'unknown-format', why: 'valid, but it tells edits and not what there is' },
};

describeReal('osm-testdata xml', () => {
  it('has the cases that are in the table', () => {
    expect(cases.sort()).toEqual(Object.keys(OUTCOMES));
  });

  it.each(cases)('%s is read or refused as stated', async (name) => {
    const file = readdirSync(`${FOLDER}${name}`).find((entry) => entry.startsWith('data.')) ?? '';
    const read = await readExtract(`${FOLDER}${name}/${file}`, { source: file, ground: null });
    const { outcome, why } = OUTCOMES[name] ?? { outcome: '' };
    const counts = read.ok ? read.value.counts : null;
    expect(read.ok ? `${counts?.nodes}/${counts?.ways}/${counts?.relations}` : read.problem.code).toBe(
      outcome,
    );
    const verdictPath = `${FOLDER}${name}/result`;
    const verdict = existsSync(verdictPath) ? readFileSync(verdictPath, 'utf8').trim() : 'none';
    if (why === undefined) expect(read.ok ? 'valid' : 'invalid').toBe(verdict);
    else expect(read.ok ? 'valid' : 'invalid').not.toBe(verdict);
  });
});
