import { describe, expect, it } from 'vitest';
import { problemFrom } from '../../../web/api/api.ts';
import { nextState, startState } from '../../../web/state/use-trip.ts';
import { sampleReply } from '../sample-reply.ts';

const reply = sampleReply();
const opened = nextState(startState, { kind: 'opened', reply, files: null });

describe("the page's state", () => {
  it('has no edit to reckon when a route has just been opened', () => {
    expect(opened).toMatchObject({ phase: 'settled', pending: null, openings: 1 });
  });

  it('edits and saves what was said, not what was filled in', () => {
    expect(opened.said).toBe(reply.said);
  });

  it('keeps the last good answer and the edit when the server refuses', () => {
    const said = { ...opened.said!, trip: { corridorKm: -1 } };
    const edited = nextState(opened, { kind: 'edited', said });
    const refused = nextState(edited, { kind: 'refused', problem: problemFrom(422, '{}') });
    expect(refused.reply).toBe(reply);
    expect(refused.said).toBe(said);
    expect(refused.phase).toBe('refused');
  });

  it('forgets the refusal once an answer comes', () => {
    const refused = nextState(opened, { kind: 'refused', problem: problemFrom(422, '{}') });
    expect(nextState(refused, { kind: 'reckoned', reply })).toMatchObject({
      problem: null,
      phase: 'settled',
    });
  });

  it('has an edit of its own for each change, so that none goes unreckoned', () => {
    const once = nextState(opened, { kind: 'edited', said: opened.said! });
    const twice = nextState(once, { kind: 'edited', said: opened.said! });
    expect(twice.pending).not.toBe(once.pending);
  });

  it('takes no edit while nothing is open', () => {
    expect(nextState(startState, { kind: 'edited', said: opened.said! })).toBe(startState);
  });
});
