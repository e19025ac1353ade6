// On a narrow screen the strip of pages scrolls sideways: brings the page that is open into view.

document.querySelector(".site-header nav [aria-current]")?.scrollIntoView({ block: "nearest", inline: "center" });
