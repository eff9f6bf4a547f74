/** The part of lit-html's types that the page uses, for the type checker alone. */
export interface TemplateResult { readonly strings: TemplateStringsArray; readonly values: unknown[] }
export function html(strings: TemplateStringsArray, ...values: unknown[]): TemplateResult;
export function svg(strings: TemplateStringsArray, ...values: unknown[]): TemplateResult;
export function render(value: unknown, container: Element | DocumentFragment): unknown;
export const nothing: unique symbol;
