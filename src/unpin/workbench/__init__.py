"""The desk: a local page on which a problem is drawn, checked, taken apart, solved and taught from.

`app.desk(folder)` is the whole server as a value; `serve.run` starts it on the loopback address. A request is read, one call
into the package is made, and plain data goes back; statics, drawing and words are where they always are. Read `app` and `questions`, then
`looking` (what is seen of a text), `hand` (a route chosen by hand), `folder` (files), `engine` (the processes) and `guard` (who may ask).
"""
