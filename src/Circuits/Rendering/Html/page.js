// Comfort only: everything on the page is there without it.
(() => {
  const status = document.getElementById("lit");
  for (const drawing of document.querySelectorAll("svg.oil-circuit")) {
    const passages = drawing.querySelectorAll("g.symbol[data-passage]");
    if (!passages.length) continue;
    // A picture hides what is in it; with passages that can be chosen it is a group.
    drawing.setAttribute("role", "group");
    const light = circuit => {
      let count = 0;
      for (const part of drawing.querySelectorAll("g[data-circuit]")) {
        const isLit = circuit !== null && part.dataset.circuit === circuit;
        part.classList.toggle("lit", isLit);
        if (isLit && part.classList.contains("symbol")) count++;
      }
      drawing.classList.toggle("dim", circuit !== null);
      for (const passage of passages) passage.setAttribute("aria-pressed", String(circuit !== null && passage.dataset.circuit === circuit));
      status.textContent = circuit === null ? "" : `Circuit ${circuit}: ${count} ${count === 1 ? "passage" : "passages"} lit. Escape puts it out.`;
    };
    let lit = null;
    const choose = passage => {
      lit = lit === passage.dataset.circuit ? null : passage.dataset.circuit;
      light(lit);
    };
    for (const passage of passages) {
      const title = passage.querySelector("title");
      passage.setAttribute("role", "button");
      passage.setAttribute("tabindex", "0");
      // What is lettered comes first, so that it can be called by what is seen.
      const lettered = [...passage.querySelectorAll("text")].map(text => text.textContent).join(" ");
      passage.setAttribute("aria-label", title ? `${lettered}: ${title.textContent}` : lettered);
      passage.addEventListener("click", () => choose(passage));
      passage.addEventListener("keydown", event => {
        if (event.key === "Enter" || event.key === " ") {
          event.preventDefault();
          choose(passage);
        }
      });
    }
    drawing.addEventListener("keydown", event => {
      if (event.key === "Escape" && lit !== null) light(lit = null);
    });
  }
  if (status) status.textContent = "Choose a passage in the drawing to light up its circuit.";
})();
