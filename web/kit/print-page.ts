/**
 * Hands a page of HTML to the browser's printer, by way of a frame that is not seen: scripts of it do not run. The frame goes
 * when the next page is printed: a browser may still be at work when its dialog is closed.
 */
export function printPage(html: string): void {
  document.querySelector(`.${FRAME}`)?.remove();
  const frame = document.createElement('iframe');
  frame.className = FRAME;
  frame.setAttribute('sandbox', 'allow-same-origin allow-modals');
  frame.setAttribute('aria-hidden', 'true');
  frame.tabIndex = -1;
  frame.addEventListener('load', () => {
    frame.contentWindow?.focus();
    frame.contentWindow?.print();
  });
  frame.srcdoc = html;
  document.body.append(frame);
}

const FRAME = 'printed-page';
