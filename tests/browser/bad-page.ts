/** A page with one fault for each judge, to show that they would see it. */
export const BAD_PAGE = `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>Bad</title>
<style>
@page { size: A5 portrait; margin: 10mm }
@media print { .sheet { break-after: page } }
a { font-size: 10px; line-height: 1 }
.faint { color: #bbb; background: #fff }
.wide { width: 500px; white-space: nowrap }
.cut { width: 50px; height: 20px; overflow: hidden; white-space: nowrap }
.frame { width: 50px; overflow-x: auto; white-space: nowrap }
.over { position: absolute; top: 0; left: 0 }
.dark:focus { outline: none }
.pale:focus { outline: 3px solid #eee }
.high { position: absolute; top: 60px; left: 0 }
.is-chosen { color: #00c }
.under { position: absolute; bottom: 0; right: 0; width: 60px; height: 30px }
</style>
</head>
<body>
<div class="over">One text here</div>
<div class="over">Another one there</div>
<h1 id="twice" class="sheet">First</h1>
<h1 id="twice">Second</h1>
<h3>Too deep</h3>
<nav><a href="../index.html">a</a><a class="dark" href="gone.html">b</a><a href="#gone">c</a></nav>
<a class="late" tabindex="1" href="https://pack.invalid/">d</a>
<a tabindex="-1" href="bad.html">e</a>
<p class="faint" aria-labelledby="nobody" onclick="undefined" style="color: #bbb">Faint</p>
<p class="wide">A line that is far wider than the window, and goes on for longer than anyone can see</p>
<p class="cut">Words that are cut off after a little while</p>
<p class="frame">Words that scroll in a frame of their own</p>
<a class="pale" href="#twice">f</a><a class="high" href="#twice">h</a>
<a class="under" href="#twice">g</a><div class="under"></div>
<p class="is-chosen">Chosen by its colour</p><p>Not chosen</p>
<p>Nuit noire</p>
<p lang="fr">Nuit noire</p>
<p lang="fr">The night of</p>
<div><svg aria-hidden="true"><rect width="9" height="9" /></svg></div>
<ul class="question"><li><img alt="A gesture" src="data:image/gif;base64,R0lGODlhAQABAAAAACw="></li><li><img alt="A gesture" src="data:image/gif;base64,R0lGODlhAQABAAAAACw="></li></ul>
<table><tr><td>1</td></tr></table>
<table><thead><tr><th></th></tr></thead><tbody><tr><td>1</td></tr></tbody></table>
<table><tr><th>Night</th><td>1</td></tr></table>
<img src="missing.png">
<svg role="img" aria-label="Picture of Nuit noire and Miche ronde"><rect width="9" height="9" fill="url(#no-paint)" /></svg>
<script>console.log('hello')</script>
</body>
</html>
`;
