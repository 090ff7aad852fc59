import { cabWords } from '../../server/words/cab.ts';
import type { AnswerLines, WayLines } from './answer-lines.ts';

interface AnswerProps {
  lines: AnswerLines;
  /** Readings that are too old, and the like, in words. */
  stale: readonly string[];
}

/** Whether to go on or back: one word to be read from the seat, then each way with its margins. */
export function Answer({ lines, stale }: AnswerProps) {
  const { answer, head, todo, help, on, back, rests } = lines;
  return (
    <section className="answer" aria-live="polite" aria-atomic="true">
      <div className={`head head-${answer}`}>
        <h1>{head}</h1>
        {[...stale, ...todo, ...help].map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
      {on !== null && <Way way={on} />}
      {back !== null && <Way way={back} />}
      {rests.length > 0 && (
        <p className="soft">
          {cabWords().answer.rests} {rests.join('; ')}.
        </p>
      )}
    </section>
  );
}

function Way({ way: { head, verdict, lines } }: { way: WayLines }) {
  return (
    <section className={`way way-${verdict}`}>
      <h2>{head}</h2>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </section>
  );
}
