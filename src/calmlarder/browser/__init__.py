"""The terminal program in a browser, on this machine alone unless more is asked for. The only room with a socket."""
