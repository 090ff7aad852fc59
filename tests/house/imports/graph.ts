/** Who points at whom: of files by path, or of folders. */
export type Graph = ReadonlyMap<string, ReadonlySet<string>>;

/** The graph of the folders of files: a folder points at another where one of its files points at one of the other's. */
export function folderGraph(files: Graph): Graph {
  const folders = new Map<string, Set<string>>();
  for (const [file, targets] of files) {
    const from = folderOf(file);
    const reached = folders.get(from) ?? new Set<string>();
    folders.set(from, reached);
    for (const target of targets) if (folderOf(target) !== from) reached.add(folderOf(target));
  }
  return folders;
}

const folderOf = (file: string): string => file.slice(0, Math.max(0, file.lastIndexOf('/')));

/**
 * Groups of nodes that all reach each other, each of two nodes or more: Tarjan, "Depth-first search and linear graph
 * algorithms", SIAM J. Comput. 1 (1972).
 */
export function knots(graph: Graph): string[][] {
  const search = new KnotSearch(graph);
  for (const node of graph.keys()) search.visit(node);
  return search.knots;
}

class KnotSearch {
  readonly knots: string[][] = [];
  readonly #graph: Graph;
  readonly #order = new Map<string, number>();
  readonly #path: string[] = [];
  readonly #onPath = new Set<string>();

  constructor(graph: Graph) {
    this.#graph = graph;
  }

  /** Visits a node and what it reaches; gives the earliest node on the path that can be reached from it, by its number. */
  visit(node: string): number {
    const known = this.#order.get(node);
    if (known !== undefined) return this.#onPath.has(node) ? known : Number.POSITIVE_INFINITY;
    const own = this.#order.size;
    this.#order.set(node, own);
    this.#path.push(node);
    this.#onPath.add(node);
    let earliest = own;
    for (const target of this.#graph.get(node) ?? []) earliest = Math.min(earliest, this.visit(target));
    if (earliest === own) this.#close(node);
    return earliest;
  }

  /** Takes off the path what came after a node that reaches nothing before itself. */
  #close(node: string): void {
    const knot = this.#path.splice(this.#path.indexOf(node));
    for (const member of knot) this.#onPath.delete(member);
    if (knot.length > 1) this.knots.push(knot);
  }
}

/** A shortest way from the first node of a knot round to itself, the node at both ends. */
export function wayRound(graph: Graph, [start = '', ...others]: readonly string[]): string[] {
  const within = new Set([start, ...others]);
  const cameFrom = new Map<string, string>();
  const queue = [start];
  for (const node of queue) {
    for (const target of graph.get(node) ?? []) {
      if (target === start) return [...wayBack(cameFrom, node), start];
      if (!within.has(target) || cameFrom.has(target)) continue;
      cameFrom.set(target, node);
      queue.push(target);
    }
  }
  throw new Error(`${start} does not reach itself`);
}

function wayBack(cameFrom: ReadonlyMap<string, string>, node: string): string[] {
  const before = cameFrom.get(node);
  return before === undefined ? [node] : [...wayBack(cameFrom, before), node];
}
