package commands
