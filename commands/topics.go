package commands

// topics lists every topic, in the order of the help. Each is declared in a
// file of its own.
func topics() []Topic {
	return []Topic{
		wedgeCountTopic(),
		wedgeRingTopic(),
		wedgeFitTopic(),
		wedgeStripsTopic(),
		splitTopic(),
		layoutTopic(),
		settingTrianglesTopic(),
		sashingTopic(),
		bedTopic(),
		copingTopic(),
		scaleTopic(),
		piecesTopic(),
		yardageTopic(),
		shrinkageTopic(),
		threadTopic(),
		widthChangeTopic(),
		bordersTopic(),
		backingTopic(),
		battingTopic(),
		bindingTopic(),
		biasBindingTopic(),
		edgeTrianglesTopic(),
		quiltingPriceTopic(),
		convertTopic(),
		reminderTopic(),
		settingsTopic(),
		helpTopic(),
	}
}
