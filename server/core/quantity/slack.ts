/**
 * Days and litres are floats: this keeps their noise from turning a margin of nothing into a shortage.
 */
export const SLACK = 1e-9;
