// The first page of a long register: finds hulls in an index that is loaded piece by piece when it is first asked for.
(function () {
	"use strict";
	var box = document.getElementById("hulls");
	if (!box) return;
	var pieces = parseInt(box.getAttribute("data-pieces"), 10), loaded = 0, rows = [], asked = false;
	var most = 100;

	function make(name, text) {
		var el = document.createElement(name);
		if (text) el.textContent = text;
		return el;
	}

	var label = make("label", "Find hulls "), input = make("input"), status = make("p"), list = make("ol");
	input.type = "search";
	input.autocomplete = "off";
	status.setAttribute("role", "status");
	list.className = "lines";
	box.className = "filter";
	label.appendChild(input);
	box.appendChild(label);
	box.appendChild(status);
	box.appendChild(list);

	function show() {
		var words = input.value.toLowerCase().split(/\s+/).filter(Boolean), found = 0;
		list.textContent = "";
		if (words.length) rows.forEach(function (row) {
			var text = row.join(" ").toLowerCase();
			if (!words.every(function (w) { return text.indexOf(w) >= 0; }) || ++found > most) return;
			var item = make("li"), way = make(row[4] ? "a" : "span", row[0]);
			if (row[4]) way.href = encodeURIComponent(row[0]) + "/index.html";
			item.appendChild(way);
			item.appendChild(document.createTextNode(" " + row.slice(1).filter(Boolean).join(", ")));
			list.appendChild(item);
		});
		status.textContent = !words.length ? "" : found + " found" + (found > most ? ", the first " + most + " shown" : "") + (loaded < pieces ? "; still reading" : "");
	}

	window.HULLFILE_HULLS = function (some) {
		rows = rows.concat(some);
	};

	function next() {
		show();
		if (loaded === pieces) return;
		var script = make("script");
		script.src = "register/hulls-" + ("000" + (loaded + 1)).slice(-4) + ".js";
		script.onload = script.onerror = function () {
			loaded++;
			next();
		};
		document.head.appendChild(script);
	}

	input.addEventListener("input", function () {
		if (asked) return show();
		asked = true;
		next();
	});
})();
