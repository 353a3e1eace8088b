// Comfort only: without it every gear stands on the page, one after the other, and the links lead to them.
(function () {
  'use strict';
  var gears = Array.prototype.slice.call(document.querySelectorAll('.gear'));
  var links = Array.prototype.slice.call(document.querySelectorAll('.picker a'));
  function pick(id) {
    if (!gears.some(function (gear) { return gear.id === id; })) return false;
    gears.forEach(function (gear) { gear.classList.toggle('picked', gear.id === id); });
    links.forEach(function (link) {
      if (link.getAttribute('href') === '#' + id) link.setAttribute('aria-current', 'true');
      else link.removeAttribute('aria-current');
    });
    return true;
  }
  if (gears.length > 1) {
    document.body.classList.add('picking');
    if (!pick(location.hash.slice(1))) pick(document.querySelector('.picker').dataset.first);
    window.addEventListener('hashchange', function () { pick(location.hash.slice(1)); });
    links.forEach(function (link) {
      link.addEventListener('click', function (event) {
        event.preventDefault();
        pick(link.getAttribute('href').slice(1));
      });
    });
    document.querySelectorAll('a[href^="#gear-"]').forEach(function (link) {
      link.addEventListener('click', function () { pick(link.getAttribute('href').slice(1)); });
    });
  }
  var fit = document.createElement('button');
  fit.type = 'button';
  fit.textContent = 'Fit drawings to the page';
  fit.setAttribute('aria-pressed', 'false');
  fit.addEventListener('click', function () {
    fit.setAttribute('aria-pressed', document.body.classList.toggle('fitted') ? 'true' : 'false');
  });
  if (document.querySelector('.status')) document.querySelector('.status').before(fit);
  var lit = null;
  var status = document.querySelector('.status');
  var drawings = Array.prototype.slice.call(document.querySelectorAll('.drawing svg'));
  function light(circuit) {
    lit = lit === circuit ? null : circuit;
    drawings.forEach(function (drawing) {
      drawing.classList.toggle('lit-here', lit !== null);
      drawing.querySelectorAll('[data-circuit]').forEach(function (part) {
        var on = lit !== null && part.dataset.circuit === lit;
        part.classList.toggle('lit', on);
        if (part.hasAttribute('role')) part.setAttribute('aria-pressed', on ? 'true' : 'false');
      });
    });
    if (status) status.textContent = lit === null ? 'No circuit is lit up.' : 'Lit up: circuit ' + lit + '.';
  }
  drawings.forEach(function (drawing) {
    if (!drawing.querySelector('[data-circuit]')) return;
    drawing.classList.add('lights');
    drawing.setAttribute('role', 'group');
    drawing.querySelectorAll('.symbol[data-passage][data-circuit]').forEach(function (passage) {
      passage.setAttribute('tabindex', '0');
      passage.setAttribute('role', 'button');
      passage.setAttribute('aria-pressed', 'false');
      passage.addEventListener('keydown', function (event) {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        light(passage.dataset.circuit);
      });
    });
    drawing.addEventListener('click', function (event) {
      var part = event.target.closest('[data-circuit]');
      if (part) light(part.dataset.circuit);
    });
  });
  document.addEventListener('keydown', function (event) {
    if (event.key === 'Escape' && lit !== null) light(lit);
  });
})();
