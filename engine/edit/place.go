package edit
