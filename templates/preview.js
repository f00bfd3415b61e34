// Only in a preview: asks to be told when the records were saved, and shows what became of them.
(function () {
	"use strict";
	var me = document.currentScript, seen = me.dataset.seen, back = me.dataset.back;
	var news = new EventSource("/preview-events");
	news.addEventListener("sound", function (e) {
		if (e.data === seen) return;
		news.close();
		if (me.dataset.page === "faults") location.replace(back || "/");
		else location.reload();
	});
	news.addEventListener("faults", function (e) {
		if (e.data === seen) return;
		news.close();
		if (me.dataset.page === "faults") location.reload();
		else location.assign("/preview-faults?back=" + encodeURIComponent(location.pathname + location.hash));
	});
})();
