// Runs controls/tst_*.qml: every control driven by real clicks, touches and keys.
#include <QQmlEngine>
#include <QtQuickTest>

#include "support/screens.h"

class Setup : public QObject {
    Q_OBJECT

public slots:
    void qmlEngineAvailable(QQmlEngine* engine) { burrow::test::prepare(*engine); }
};

QUICK_TEST_MAIN_WITH_SETUP(controls, Setup)
#include "tst_controls.moc"
