package words

// helpWords are the words of the panel that says how the page works.
func helpWords() []Entry {
	return []Entry{
		{"help.button", "Help"},
		{"help.title", "How this works"},
		{"help.close", "Back to the job"},
		{"help.jobs", "Five jobs"},
		{"help.jobs-is", "Survey says what the wall is. Arrange puts modules on it. Make lists boards and cuts. Hang sets out the holes. Agree hands it on. Any of them can be opened at any time."},
		{"help.figures", "Figures"},
		{"help.figures-is", "Tap a figure of the picture, or a field, and type it. Millimetres, centimetres, metres, feet and inches are read. What was understood stands below before it counts."},
		{"help.picture", "The picture"},
		{"help.picture-is", "Drag a module, or choose it in the list and use the buttons there. Two fingers zoom and move the view, as do the buttons below the wall. All that the picture can do, the list can do too."},
		{"help.round", "In the round"},
		{"help.round-is", "One finger turns the boards, two move and zoom, two taps show all. The slider pulls them apart at their joints. On the picture the arrow keys turn, with Shift they move; plus and minus zoom, 0 shows all, Escape goes back. Nothing there changes the plan."},
		{"help.verdicts", "Fits, holds, takes"},
		{"help.verdicts-is", "Tap one of the three to go to the worst that it found, and to what would help. Not checked says that a fact is missing, not that all is well."},
		{"help.undo", "Going back"},
		{"help.undo-is", "Undo takes back any change, one after the other, also after the page was closed and opened again."},
		{"help.kept", "Where it is kept"},
		{"help.kept-is", "In this browser on this device, and nowhere else. To have it elsewhere too, save the plan as a file or send its link: both are in Agree."},
		{"help.keys", "Keys"},
		{"help.keys-is", "Tab goes on, Enter and the space bar press. On the picture the arrow keys move what is chosen, or else the view. Escape lets go. Ctrl or Cmd with Z undoes, with Y does again."},
	}
}
