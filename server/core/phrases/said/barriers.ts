/** What may lie between a route and a supply. */
export type BarrierKind = 'river' | 'canal' | 'railway' | 'coast' | 'border';

/** Land on which a supply is not there for everybody. */
export type ClosedLand = 'military' | 'prison' | 'airfield' | 'closed';
