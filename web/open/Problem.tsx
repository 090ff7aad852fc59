import type { ProblemDetails } from '../api.ts';

/** A refusal in the server's words: what is wrong, where, and what to do about it. */
export function Problem({ problem, before }: { problem: ProblemDetails; before?: string }) {
  const where = [problem.source, problem.place].filter(
    (part) => part !== null && !problem.detail.includes(part),
  );
  return (
    <div className="problem" role="alert">
      <p>
        {before !== undefined && `${before} `}
        <b>{problem.title}</b>
        {where.length > 0 && ` (${where.join(', ')})`}
      </p>
      {problem.detail !== problem.title && <p>{problem.detail}</p>}
      {problem.remedy !== null && !problem.detail.includes(problem.remedy) && <p>{problem.remedy}.</p>}
    </div>
  );
}
