/** Opens the browser's own print window on a self-contained page, at the page's own size. */
export function printPage(html: string, title: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const frame = document.createElement('iframe');
    frame.title = title;
    frame.className = 'print-frame';
    // A blob page inherits the strict content rules of this window; the page holds no script.
    const url = URL.createObjectURL(new Blob([html], { type: 'text/html' }));
    const done = (): void => {
      frame.remove();
      URL.revokeObjectURL(url);
    };
    frame.addEventListener('load', () => {
      const page = frame.contentWindow;
      if (page === null) {
        done();
        reject(new Error('The page did not open.'));
        return;
      }
      page.addEventListener('afterprint', () => {
        done();
        resolve();
      });
      page.focus();
      page.print();
    });
    frame.src = url;
    document.body.append(frame);
  });
}
