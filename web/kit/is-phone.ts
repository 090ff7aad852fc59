/** Whether the page stands in one column, as the style sheet has it below this width. */
export const isPhone = (): boolean => matchMedia('(max-width: 679.98px)').matches;
