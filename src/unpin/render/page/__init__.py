"""What a page is made of besides its content: one style sheet and one small script, both put inside the page."""
