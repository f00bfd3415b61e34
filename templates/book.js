// The file is complete without this script. It adds sorting of tables, a filter above long ones, and search.
(function () {
	"use strict";

	function make(name, text, attributes) {
		var el = document.createElement(name);
		if (text) el.textContent = text;
		for (var key in attributes || {}) el.setAttribute(key, attributes[key]);
		return el;
	}

	// Sorting. Cells that are all numbers are compared as numbers; what is not recorded comes last either way.
	function cellText(row, column) {
		var cell = row.children[column];
		if (!cell || cell.querySelector(".none")) return "";
		return (cell.firstChild && cell.querySelector("small") ? cell.firstChild.textContent : cell.textContent).trim();
	}

	function asNumber(text) {
		var plain = text.replace(/[\s\u00a0\u202f]/g, "").replace("\u2212", "-").replace(/^[±+]/, "");
		return /^-?\d+(\.\d+)?$/.test(plain) ? parseFloat(plain) : NaN;
	}

	// What several rows ask alike stands above them. Before rows are moved or hidden it is put into each, so that none loses it.
	function ungroup(table) {
		var asked = "";
		Array.prototype.slice.call(table.tBodies[0].rows).forEach(function (row) {
			if (row.className === "asking") {
				asked = row.cells[0].textContent;
				row.parentNode.removeChild(row);
			} else if (asked) {
				row.cells[2].appendChild(make("small", asked));
			}
		});
	}

	function sortBy(table, column, down) {
		ungroup(table);
		var body = table.tBodies[0];
		var rows = Array.prototype.map.call(body.rows, function (row) {
			var text = cellText(row, column);
			return { row: row, text: text, number: asNumber(text) };
		});
		var numbers = rows.every(function (r) { return r.text === "" || !isNaN(r.number); });
		rows.sort(function (a, b) {
			if (a.text === "" || b.text === "") return a.text === b.text ? 0 : a.text === "" ? 1 : -1;
			var order = numbers ? a.number - b.number : a.text.localeCompare(b.text, "en", { numeric: true });
			return down ? -order : order;
		});
		rows.forEach(function (r) { body.appendChild(r.row); });
	}

	function sortable(table) {
		if (!table.tHead || table.tBodies.length !== 1 || table.tBodies[0].rows.length < 2) return;
		Array.prototype.forEach.call(table.tHead.rows[0].cells, function (head, column) {
			var button = make("button", "", { type: "button" });
			while (head.firstChild) button.appendChild(head.firstChild);
			head.appendChild(button);
			button.addEventListener("click", function () {
				var down = head.getAttribute("aria-sort") === "ascending";
				Array.prototype.forEach.call(table.tHead.rows[0].cells, function (other) { other.removeAttribute("aria-sort"); });
				head.setAttribute("aria-sort", down ? "descending" : "ascending");
				sortBy(table, column, down);
			});
		});
	}

	// Filter: rows or findings that hold every word that was typed.
	function filterable(target, rows, before, name) {
		if (rows.length < 5) return;
		var box = make("div", "", { "class": "filter" });
		var label = make("label", name + " ");
		var input = make("input", "", { type: "search", autocomplete: "off" });
		var count = make("span", "", { role: "status" });
		label.appendChild(input);
		box.appendChild(label);
		box.appendChild(count);
		before.parentNode.insertBefore(box, before);
		input.addEventListener("input", function () {
			if (target) ungroup(target);
			var words = input.value.toLowerCase().split(/\s+/).filter(Boolean);
			var shown = 0;
			rows.forEach(function (row) {
				var text = row.textContent.toLowerCase();
				row.hidden = !words.every(function (w) { return text.indexOf(w) >= 0; });
				if (!row.hidden) shown++;
			});
			count.textContent = words.length ? shown + " of " + rows.length : "";
		});
	}

	// What a word is worth where it is found: more in a title than among the words, more as a whole word than as a part of one.
	// Loosely, a word of five letters or more may differ in one letter from one of a title.
	function worth(word, title, titleWords, words, text, loosely) {
		if (titleWords.indexOf(word) >= 0) return 12;
		if (titleWords.some(function (t) { return t.indexOf(word) === 0; })) return 8;
		if (title.indexOf(word) >= 0) return 5;
		if (words.indexOf(word) >= 0) return 4;
		if (text.indexOf(" " + word) >= 0) return 2;
		if (text.indexOf(word) >= 0) return 1;
		return loosely && word.length > 4 && titleWords.some(function (t) { return near(word, t); }) ? 1 : 0;
	}

	// One letter more, fewer, other, or two that changed places.
	function near(a, b) {
		if (Math.abs(a.length - b.length) > 1) return false;
		var i = 0, j = a.length, k = b.length;
		while (i < j && i < k && a[i] === b[i]) i++;
		while (j > i && k > i && a[j - 1] === b[k - 1]) { j--; k--; }
		return j - i <= 1 && k - i <= 1 || j - i === 2 && k - i === 2 && a[i] === b[i + 1] && a[i + 1] === b[i];
	}

	// Entries that hold every word, the worthiest first; pages stand before what lies on them, findings and records after.
	function found(words, loosely) {
		var hits = [], order = { "": 5, finding: -1, record: -3 };
		window.HULLFILE_SEARCH.forEach(function (entry, at) {
			var title = entry.t.toLowerCase(), text = " " + (entry.w || "").toLowerCase();
			var titleWords = title.split(/[^a-z0-9\u00c0-\uffff.-]+/), textWords = text.split(/[\s,;:()]+/), sum = 0;
			var all = words.every(function (w) {
				var n = worth(w, title, titleWords, textWords, text, loosely);
				sum += n;
				return n > 0;
			});
			if (!all) return;
			if (title === words.join(" ")) sum += 20;
			hits.push({ entry: entry, rank: sum + (order[entry.k || ""] || 0), at: at });
		});
		hits.sort(function (a, b) { return b.rank - a.rank || a.at - b.at; });
		return hits;
	}

	// Search over the index of the file, which is loaded when it is first needed.
	function search(rail, up) {
		var form = make("form", "", { "class": "search", role: "search" });
		var label = make("label", "Search this file");
		var input = make("input", "", { type: "search", autocomplete: "off" });
		var status = make("p", "", { role: "status" });
		var list = make("ol", "", {});
		label.appendChild(input);
		form.appendChild(label);
		form.appendChild(status);
		form.appendChild(list);
		rail.insertBefore(form, rail.firstChild);
		form.addEventListener("submit", function (event) {
			event.preventDefault();
			var first = list.querySelector("a");
			if (first) first.click();
		});
		function load() {
			input.removeEventListener("focus", load);
			var script = make("script", "", { src: up + "assets/search.js" });
			script.addEventListener("load", show);
			document.head.appendChild(script);
		}
		input.addEventListener("focus", load);
		input.addEventListener("input", show);
		function show() {
			var words = input.value.toLowerCase().split(/\s+/).filter(Boolean);
			list.textContent = "";
			status.textContent = "";
			if (!words.length || !window.HULLFILE_SEARCH) return;
			var hits = found(words, false);
			if (!hits.length) hits = found(words, true);
			status.textContent = hits.length === 0 ? "Nothing found." : hits.length > 12 ? "12 of " + hits.length + " found." : hits.length + " found.";
			hits.slice(0, 12).forEach(function (hit) {
				var item = make("li"), link = make("a", (hit.entry.n ? hit.entry.n + "  " : "") + hit.entry.t, {});
				link.href = up + hit.entry.h;
				if (hit.entry.k) link.appendChild(make("small", " " + hit.entry.k, {}));
				item.appendChild(link);
				list.appendChild(item);
			});
		}
	}

	// An anchor that lies in another part of a long page is named in the first one.
	function moved() {
		var at = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
		if (at && at.parentNode.parentNode.className === "moved") location.replace(at.href);
	}

	function start() {
		moved();
		window.addEventListener("hashchange", moved);
		Array.prototype.forEach.call(document.querySelectorAll("table.filterable"), function (table) {
			if (table.tBodies[0]) filterable(table, Array.prototype.slice.call(table.tBodies[0].rows).filter(function (row) { return row.className !== "asking"; }), table.parentNode, "Show only rows with");
		});
		var groups = document.querySelectorAll("section.group");
		if (groups.length) filterable(null, Array.prototype.slice.call(document.querySelectorAll("section.group .findings > li")), groups[0], "Show only findings with");
		Array.prototype.forEach.call(document.querySelectorAll("table.sortable"), sortable);
		var rail = document.getElementById("contents");
		if (rail) search(rail, document.body.getAttribute("data-up") || "");
	}

	if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", start);
	else start();
})();
