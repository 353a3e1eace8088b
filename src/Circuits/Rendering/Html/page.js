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
  // On paper a wide drawing is small: the chosen gear follows its own drawing once more, in parts that can be read.
  const large = document.getElementById("large");
  const clear = () => document.querySelectorAll("figure.part").forEach(part => part.remove());
  const enlarge = () => {
    clear();
    const picked = document.querySelector(".picker input[name=gear]:checked");
    if (!large.checked || !picked) return;
    const whole = document.querySelector(`#${picked.id.replace("pick", "gear")} figure[data-parts]`);
    if (!whole) return;
    const space = "http://www.w3.org/2000/svg";
    const source = whole.querySelector("svg.oil-circuit");
    const parts = whole.dataset.parts.split(";").map(part => part.split(" ").map(Number));
    const { scale, columns } = whole.dataset;
    whole.after(...parts.map(([x, y, width, height], i) => {
      const name = `${source.querySelector("title").textContent}, part ${i + 1} of ${parts.length}: column ${i % columns + 1}, row ${Math.floor(i / columns) + 1}`;
      const svg = document.createElementNS(space, "svg");
      for (const [attribute, value] of Object.entries({ class: "oil-circuit", viewBox: `${x} ${y} ${width} ${height}`, width: `${width * scale}mm`, height: `${height * scale}mm`, role: "img", "aria-label": name })) svg.setAttribute(attribute, value);
      svg.append(document.createElementNS(space, "use"));
      svg.lastChild.setAttribute("href", `#${source.querySelector("[id$=-whole]").id}`);
      const figure = document.createElement("figure");
      figure.className = "part";
      figure.append(document.createElement("figcaption"), svg);
      figure.firstChild.textContent = name;
      return figure;
    }));
  };
  if (large) {
    document.getElementById("large-choice").hidden = !document.querySelector("figure[data-parts]");
    addEventListener("beforeprint", enlarge);
    addEventListener("afterprint", clear);
  }
  if (status) status.textContent = "Choose a passage in the drawing to light up its circuit.";
})();
