module counterhand

go 1.26
