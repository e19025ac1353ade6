/* A notification of the phone's own, for somebody who put it away while something takes its time: only where it was
   allowed, and never without a worker, because a page that is closed cannot show one. */

/** @param {string} text @param {{tag: string, page: string}} options */
export async function notify(text, { tag, page }) {
  if (!("Notification" in window) || Notification.permission !== "granted") return;
  const registration = await navigator.serviceWorker?.getRegistration();
  await registration?.showNotification(text, { tag, data: page });
}
